namespace PatternShop.Weave;

/// <summary>Repeated rows that do not join: an end floats longer across the seam between two times through than anywhere else.</summary>
/// <param name="Weight">A note where each time weaves every row of the motif once; a caution otherwise.</param>
/// <param name="Step">The step of the row plan, from 0.</param>
/// <param name="Band">The rows.</param>
/// <param name="Across">Rows in the longest float across the seam.</param>
/// <param name="Elsewhere">Rows in the longest float that crosses no seam.</param>
/// <param name="RowsAlike">Whether the last row of a time and the first of the next do the same at every pattern end.</param>
/// <param name="Count">Seams.</param>
public sealed record SeamBreaks(Weight Weight, int Step, Band Band, int Across, int Elsewhere, bool RowsAlike, int Count, Sequence<Area> Areas)
    : Finding(CheckKind.Seam, Weight, Count, Areas)
{
    internal override int Which => Step;
}

/// <summary>
/// Looks at the seams between two times through in the woven piece. Where each time weaves every row of the motif once, the seam is a part
/// of the figure, and only two rows alike are spoken of.
/// </summary>
internal static class SeamCheck
{
    public static IEnumerable<Finding> Of(Piece piece)
    {
        var repeated = piece.Bands.Where(band => band.Kind == BandKind.Repeated).ToList();
        return repeated.Count == 0 ? [] : Found(piece, SeamScan.Of(piece, repeated));
    }

    private static IEnumerable<Finding> Found(Piece piece, SeamScan scan) =>
        from band in scan.Bands
        where band.Longest > scan.Elsewhere
        let seam = band.Band.FirstRowOf(2)
        let alike = PatternAlike(piece, seam - 1, seam)
        let whole = IsWholeMotif(piece, band.Band)
        where alike || !whole
        select new SeamBreaks(
            whole ? Weight.Note : Weight.Caution,
            piece.Rows[band.Band.FirstRow - 1].Step,
            band.Band,
            band.Longest,
            scan.Elsewhere,
            alike,
            band.Band.Times - 1,
            band.Areas);

    private static bool IsWholeMotif(Piece piece, Band band) =>
        piece.Rows.Skip(band.FirstRow - 1).Take(band.RowsEachTime).Select(row => row.ChartRow ?? 0).Order()
            .SequenceEqual(Enumerable.Range(1, piece.Document.Motif.Rows));

    private static bool PatternAlike(Piece piece, int row, int next) =>
        Enumerable.Range(piece.FloatingPerSide, piece.PatternEnds).All(column => piece.At(row, column) == piece.At(next, column));
}
