namespace PatternShop.Weave;

/// <summary>Turns of one weft at one side that are not wrapped.</summary>
/// <param name="Weft">The weft, from 1.</param>
/// <param name="Side">The side.</param>
/// <param name="Turns">All turns of the weft at that side, wrapped or not.</param>
/// <param name="NoneHolds">Whether no turn of any weft holds the outermost end there, and no edge stitch does.</param>
/// <param name="PullsOut">Turns at which the weft goes back the way it came, past every end on the same side, so that pulling takes both rows out.</param>
/// <param name="Rows">The rows that are left by the first of the turns, at most <see cref="Finding.MostAreas"/>.</param>
public sealed record TurnsNotWrapped(int Weft, Side Side, int Count, int Turns, bool NoneHolds, int PullsOut, Sequence<int> Rows, Sequence<Area> Areas)
    : Finding(CheckKind.Turns, NoneHolds || PullsOut > 0 ? Weight.Fault : Weight.Caution, Count, Areas)
{
    // the turns of a weft are judged together: starting at the other side must not only move them there
    internal override int Which => Weft;
}

/// <summary>Looks at every turn of every weft, plain rows and edge stitches counted.</summary>
internal static class TurnsCheck
{
    public static IEnumerable<Finding> Of(Piece piece)
    {
        var turns = Turns.Of(piece).ToList();
        var stitched = piece.Stitches.Select(stitch => stitch.AfterRow).ToHashSet();
        return from here in turns.GroupBy(turn => (turn.Weft, turn.Side))
               orderby here.Key
               let loose = here.Where(turn => !turn.Wrapped).ToList()
               where loose.Count > 0
               select Found(piece, here.Key, here.Count(), loose, turns.Exists(turn => turn.Side == here.Key.Side && turn.Wrapped), stitched);
    }

    private static TurnsNotWrapped Found(Piece piece, (int Weft, Side Side) where, int turns, List<Turn> loose, bool someHold, HashSet<int> stitched)
    {
        var column = where.Side == Side.Left ? 0 : piece.Ends - 1;
        var first = loose.Take(Finding.MostAreas).ToList();
        return new TurnsNotWrapped(
            where.Weft,
            where.Side,
            loose.Count,
            turns,
            !someHold && stitched.Count == 0,
            loose.Count(turn => !stitched.Contains(turn.Row) && GoesBack(piece, turn)),
            first.Select(turn => turn.Row).ToSequence(),
            first.Select(turn => new Area(AreaOf.Piece, turn.Row, turn.Next, column, column)).ToSequence());
    }

    private static bool GoesBack(Piece piece, Turn turn)
    {
        var (here, next) = (piece.Rows[turn.Row - 1].Reading, piece.Rows[turn.Next - 1].Reading);
        return turn.Next == turn.Row + 1
            && piece.Cells.RowWords(here).SequenceEqual(piece.Cells.RowWords(next));
    }
}
