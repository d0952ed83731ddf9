namespace PatternShop.Weave;

/// <summary>How cells came to be set; only the name of the step tells it.</summary>
public enum CellsAct
{
    /// <summary>Drawn by hand, one after another.</summary>
    Draw,

    /// <summary>A box covered with a piece, again and again.</summary>
    Cover,

    /// <summary>A copy put down.</summary>
    Paste,
}

/// <summary>
/// Sets cells of the motif. Each is set to what it shall be, not turned over, so that setting them twice is the same as
/// setting them once.
/// </summary>
/// <param name="Cells">True where a cell is set; as large as the motif that it was drawn on.</param>
/// <param name="Over">What those cells become, true for over; as large as <paramref name="Cells"/>. What it says elsewhere does not matter.</param>
public sealed record SetCells(BitGrid Cells, BitGrid Over) : Edit
{
    /// <summary>How they came to be set.</summary>
    public CellsAct Act { get; init; }

    /// <summary>Covers a box of a motif with a piece, repeated from the lower left corner of the box; a last partial repeat is cut.</summary>
    /// <param name="rows">Rows of the motif.</param>
    /// <param name="ends">Ends of the motif.</param>
    /// <param name="box">The box; it lies within the motif.</param>
    /// <param name="piece">What covers it.</param>
    /// <param name="act">Whether it is covered or a copy is put down.</param>
    /// <exception cref="ArgumentOutOfRangeException">The box does not lie within the motif.</exception>
    public static SetCells Covering(int rows, int ends, CellRectangle box, BitGrid piece, CellsAct act = CellsAct.Cover)
    {
        ArgumentNullException.ThrowIfNull(piece);
        if (!box.LiesIn(rows, ends))
        {
            throw new ArgumentOutOfRangeException(nameof(box), box, "The box does not lie within the motif.");
        }

        return new SetCells(
            BitGrid.Create(rows, ends, box.Holds),
            BitGrid.Create(rows, ends, (row, end) => box.Holds(row, end) && piece[(row - box.Row) % piece.Rows, (end - box.Column) % piece.Columns]))
        {
            Act = act,
        };
    }

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
