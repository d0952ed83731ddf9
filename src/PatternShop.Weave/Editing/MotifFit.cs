namespace PatternShop.Weave;

/// <summary>Gives a document another motif and lets follow what depends on its rows and ends.</summary>
internal static class MotifFit
{
    /// <summary>The document with rows and ends taken out and put in.</summary>
    public static EditResult Spliced(PatternDocument document, Splice rows, Splice ends)
    {
        var motif = document.Motif;
        var (newRows, newEnds) = (motif.Rows - rows.Removed + rows.Added, motif.Columns - ends.Removed + ends.Added);
        return Refusal(newRows, newEnds) ?? With(document, ends.Ends(rows.Rows(motif)), rows, ends.Offset(document.Width.Offset, newEnds));
    }

    /// <summary>The document with another motif in the place of its own; rows are counted from the bottom, ends from the left.</summary>
    public static EditResult Replaced(PatternDocument document, BitGrid motif) => Refusal(motif.Rows, motif.Columns) ?? With(
        document,
        motif,
        Splice.Between(document.Motif.Rows, motif.Rows, atFarEnd: true),
        document.Width.Offset % motif.Columns);

    /// <summary>Why there can be no motif of this size; null when there can.</summary>
    public static EditResult.Refused? Refusal(int rows, int ends) => rows is < 1 or > Bounds.MotifRows || ends is < 1 or > Bounds.MotifEnds
        ? new EditResult.Refused([new Problem(
            ProblemCodes.MotifSize,
            "/motif",
            0,
            0,
            $"The motif would have {Plain.Count(rows, "row")} of {Plain.Count(ends, "end")}.",
            $"Choose 1 to {Plain.Number(Bounds.MotifRows)} rows and 1 to {Plain.Number(Bounds.MotifEnds)} ends.")])
        : null;

    private static EditResult With(PatternDocument document, BitGrid motif, Splice rows, int offset)
    {
        var fit = new RowPlanFit(document.Motif.Rows, rows);
        var plan = fit.Of(document.Rows);
        var (followed, bound) = RowBond.Follow(document, rows.NumberOf);
        return new EditResult.Done(
            followed with { Motif = motif, Width = document.Width with { Offset = offset }, Rows = plan },
            [.. bound, .. Moved(document.Width.Offset, offset), .. fit.Consequences]);
    }

    private static Sequence<Consequence> Moved(int from, int to) => from == to ? [] : [new OffsetMoved(from, to)];
}
