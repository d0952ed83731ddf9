namespace PatternShop.Weave;

/// <summary>Where a weft leaves one row and enters its next at the same side.</summary>
/// <param name="Weft">The weft, from 1.</param>
/// <param name="Row">The row that it leaves, from 1.</param>
/// <param name="Next">The row that it enters, from 1.</param>
/// <param name="Side">The side.</param>
/// <param name="Wrapped">Whether the outermost end there is passed on different sides in the two rows, so that it holds the turn.</param>
public readonly record struct Turn(int Weft, int Row, int Next, Side Side, bool Wrapped);

/// <summary>Finds the turns of a piece.</summary>
public static class Turns
{
    /// <summary>
    /// All turns in the order of the rows that are left. Where an edge stitch takes the weft between two of its rows to
    /// the other side there is no turn: the stitch holds it.
    /// </summary>
    public static IEnumerable<Turn> Of(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var last = new WovenRow?[piece.Document.Rows.Wefts.Count];
        foreach (var row in piece.Rows)
        {
            if (last[row.Weft - 1] is { } before && before.To == row.From)
            {
                var column = row.From == Side.Left ? 0 : piece.Ends - 1;
                var wrapped = piece.Cells[before.Reading, column] != piece.Cells[row.Reading, column];
                yield return new Turn(row.Weft, before.Number, row.Number, row.From, wrapped);
            }

            last[row.Weft - 1] = row;
        }
    }
}
