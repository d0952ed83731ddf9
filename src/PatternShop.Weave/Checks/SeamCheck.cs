namespace PatternShop.Weave;

/// <summary>Repeated rows that do not join: an end floats longer across the seam between two times through than anywhere else.</summary>
/// <param name="Weight">A note where each time is the motif as drawn; a caution where it is a part of it.</param>
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

/// <summary>Looks at the seams between two times through in the woven piece.</summary>
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
        select new SeamBreaks(
            IsWholeMotif(piece, band.Band) ? Weight.Note : Weight.Caution,
            piece.Rows[band.Band.FirstRow - 1].Step,
            band.Band,
            band.Longest,
            scan.Elsewhere,
            PatternAlike(piece, seam - 1, seam),
            band.Band.Times - 1,
            band.Areas);

    private static bool IsWholeMotif(Piece piece, Band band)
    {
        var rows = piece.Rows.Skip(band.FirstRow - 1).Take(band.RowsEachTime).Select(row => row.ChartRow ?? 0).ToList();
        var motif = piece.Document.Motif.Rows;
        return rows.Count == motif && (rows.SequenceEqual(Enumerable.Range(1, motif)) || rows.SequenceEqual(Enumerable.Range(1, motif).Reverse()));
    }

    private static bool PatternAlike(Piece piece, int row, int next) =>
        Enumerable.Range(piece.FloatingPerSide, piece.PatternEnds).All(column => piece.At(row, column) == piece.At(next, column));
}
