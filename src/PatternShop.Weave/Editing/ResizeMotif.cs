namespace PatternShop.Weave;

/// <summary>
/// Gives the motif another size. Ends are added or taken away at the right, rows at the top; new cells are under. What
/// depends on the size follows: a step of the row plan that wove all rows weaves all rows again, any other is cut to fit,
/// the offset is taken modulo the ends, and what the maker bound to single rows follows (<see cref="RowBond"/>).
/// </summary>
/// <param name="Rows">Rows of the motif from now on.</param>
/// <param name="Ends">Ends of the motif from now on.</param>
public sealed record ResizeMotif(int Rows, int Ends) : Edit
{
    private protected override EditResult Change(PatternDocument document)
    {
        if (Rows is < 1 or > Bounds.MotifRows || Ends is < 1 or > Bounds.MotifEnds)
        {
            return new EditResult.Refused([NoSuchSize()]);
        }

        var motif = document.Motif;
        var resized = BitGrid.Create(Rows, Ends, (row, end) => row < motif.Rows && end < motif.Columns && motif[row, end]);
        var offset = document.Width.Offset % Ends;
        var fit = new RowPlanFit(motif.Rows, Rows);
        var rows = fit.Of(document.Rows);
        var (followed, bound) = RowBond.Follow(document, row => row <= Rows ? row : null);
        return new EditResult.Done(
            followed with { Motif = resized, Width = document.Width with { Offset = offset }, Rows = rows },
            [.. bound, .. Cut(motif.Count - resized.Count), .. Moved(document.Width.Offset, offset), .. fit.Consequences]);
    }

    private Problem NoSuchSize() => new(
        ProblemCodes.MotifSize,
        "/motif",
        0,
        0,
        $"The motif would have {Plain.Count(Rows, "row")} of {Plain.Count(Ends, "end")}.",
        $"Choose 1 to {Plain.Number(Bounds.MotifRows)} rows and 1 to {Plain.Number(Bounds.MotifEnds)} ends.");

    private static Sequence<Consequence> Cut(int over) => over > 0 ? [new CellsCut(over)] : [];

    private static Sequence<Consequence> Moved(int from, int to) => from == to ? [] : [new OffsetMoved(from, to)];
}
