namespace PatternShop.Weave;

/// <summary>Repeated rows that read otherwise every other time.</summary>
/// <param name="Step">The step of the row plan, from 0.</param>
/// <param name="Band">The rows.</param>
/// <param name="Count">Rows that read otherwise the second time; 1 where only an edge stitch begins at the other side.</param>
public sealed record TimesUnlike(int Step, Band Band, int Count, Sequence<Area> Areas) : Finding(CheckKind.Repeats, Weight.Caution, Count, Areas)
{
    internal override int Which => Step;
}

/// <summary>
/// Looks for repeated rows whose directions differ the second time: nearly always because their number is odd. Where every row
/// mirrors and the edges are entering, an odd number reads the same from either side, and nothing is said.
/// </summary>
internal static class RepeatsCheck
{
    public static IEnumerable<Finding> Of(Piece piece) =>
        from band in piece.Bands
        where band.ReadsDifferently
        let unlike = Unlike(piece, band)
        where unlike > 0
        select new TimesUnlike(
            piece.Rows[band.FirstRow - 1].Step,
            band,
            unlike,
            [new Area(AreaOf.Piece, band.FirstRow, band.FirstRowOf(2) - 1, 0, piece.Ends - 1)]);

    private static int Unlike(Piece piece, Band band)
    {
        var (first, second) = (band.FirstRow - 1, band.FirstRowOf(2) - 1);
        return band.RowsDiffer
            ? Enumerable.Range(0, band.RowsEachTime).Count(row => !Travelled.Alike(piece, piece.Rows[first + row].Reading, piece, piece.Rows[second + row].Reading))
            : 1;
    }
}
