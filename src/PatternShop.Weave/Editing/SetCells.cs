namespace PatternShop.Weave;

/// <summary>
/// Sets cells of the motif. Each is set to what it shall be, not turned over, so that setting them twice is the same as
/// setting them once.
/// </summary>
/// <param name="Cells">True where a cell is set; as large as the motif that it was drawn on.</param>
/// <param name="Over">What those cells become, true for over; as large as <paramref name="Cells"/>. What it says elsewhere does not matter.</param>
public sealed record SetCells(BitGrid Cells, BitGrid Over) : Edit
{
    private protected override EditResult Change(PatternDocument document)
    {
        var motif = document.Motif;
        return (motif.Rows, motif.Columns) == (Cells.Rows, Cells.Columns)
            ? Done(document with { Motif = motif.With(Cells, Over) })
            : new EditResult.Refused([OtherSize(motif)]);
    }

    private Problem OtherSize(BitGrid motif) => new(
        EditProblemCodes.MotifOtherSize,
        "/motif",
        0,
        0,
        $"It was drawn on a motif of {Size(Cells)}; the motif now has {Size(motif)}.",
        "Give the motif that size again, or draw it anew.");

    private static string Size(BitGrid grid) => $"{Plain.Count(grid.Rows, "row")} of {Plain.Count(grid.Columns, "end")}";
}
