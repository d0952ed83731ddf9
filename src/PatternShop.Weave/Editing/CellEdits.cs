namespace PatternShop.Weave;

/// <summary>Changes of a block of cells or of the whole motif, as in <see cref="Transforms"/>.</summary>
public enum CellTransform
{
    MirrorAcross,
    MirrorAlong,
    HalfTurn,
    TurnFigure,
    TurnCloth,
    Swap,
    OtherSide,
}

/// <summary>Changes a block of cells where it stands, or the whole motif. Only a block with as many rows as ends can be turned by a quarter.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="Box">The block; null for the whole motif, which may change its size.</param>
public sealed record TransformCells(CellTransform Kind, CellRectangle? Box = null) : Edit
{
    private protected override EditResult Change(PatternDocument document)
    {
        if (Box is not { } box)
        {
            return MotifFit.Replaced(document, Of(document.Motif));
        }

        if (BoxProblems.Outside(box, document.Motif) is { } refused)
        {
            return refused;
        }

        var part = Of(Transforms.Cut(document.Motif, box));
        return part.Rows == box.Rows && part.Columns == box.Columns
            ? Done(document with { Motif = BoxProblems.Put(document.Motif, box, part) })
            : BoxProblems.NotSquare(box);
    }

    private BitGrid Of(BitGrid grid) => Kind switch
    {
        CellTransform.MirrorAcross => Transforms.MirrorAcross(grid),
        CellTransform.MirrorAlong => Transforms.MirrorAlong(grid),
        CellTransform.HalfTurn => Transforms.HalfTurn(grid),
        CellTransform.TurnFigure => Transforms.TurnFigure(grid),
        CellTransform.TurnCloth => Transforms.TurnCloth(grid),
        CellTransform.Swap => Transforms.Swap(grid),
        _ => Transforms.OtherSide(grid),
    };
}

/// <summary>Shifts the cells of a block, or of the whole motif; what leaves at one side comes in at the other.</summary>
/// <param name="Ends">Ends to the right; negative to the left.</param>
/// <param name="Rows">Rows upwards; negative downwards.</param>
/// <param name="Box">The block; null for the whole motif.</param>
public sealed record ShiftCells(int Ends, int Rows, CellRectangle? Box = null) : Edit
{
    private protected override EditResult Change(PatternDocument document)
    {
        var motif = document.Motif;
        var box = Box ?? new CellRectangle(0, 0, motif.Rows, motif.Columns);
        return BoxProblems.Outside(box, motif) is { } refused
            ? refused
            : Done(document with { Motif = BoxProblems.Put(motif, box, Transforms.Shift(Transforms.Cut(motif, box), Ends % box.Columns, Rows % box.Rows)) });
    }
}

/// <summary>Moves a block of cells to another place in the motif; where it stood the cells become under.</summary>
/// <param name="Box">The block.</param>
/// <param name="Ends">Ends to the right; negative to the left.</param>
/// <param name="Rows">Rows upwards; negative downwards.</param>
public sealed record MoveCells(CellRectangle Box, int Ends, int Rows) : Edit
{
    private protected override EditResult Change(PatternDocument document)
    {
        var motif = document.Motif;
        var to = Box with { Row = Box.Row + Rows, Column = Box.Column + Ends };
        return (BoxProblems.Outside(Box, motif) ?? BoxProblems.Outside(to, motif)) is { } refused
            ? refused
            : Done(document with
            {
                Motif = BitGrid.Create(motif.Rows, motif.Columns, (row, end) => to.Holds(row, end) ? motif[row - Rows, end - Ends] : !Box.Holds(row, end) && motif[row, end]),
            });
    }
}

internal static class BoxProblems
{
    /// <summary>The motif with a part put at the place of a block of its size.</summary>
    public static BitGrid Put(BitGrid motif, CellRectangle box, BitGrid part) =>
        BitGrid.Create(motif.Rows, motif.Columns, (row, end) => box.Holds(row, end) ? part[row - box.Row, end - box.Column] : motif[row, end]);

    public static EditResult.Refused? Outside(CellRectangle box, BitGrid motif) => box.LiesIn(motif.Rows, motif.Columns)
        ? null
        : Refused(
            EditProblemCodes.BoxOutside,
            $"These cells do not all lie in the motif, which has {Plain.Count(motif.Rows, "row")} of {Plain.Count(motif.Columns, "end")}.",
            "Choose cells of the motif.");

    public static EditResult.Refused NotSquare(CellRectangle box) => Refused(
        EditProblemCodes.BoxNotSquare,
        $"{Plain.Count(box.Rows, "row")} of {Plain.Count(box.Columns, "end")} cannot be turned by a quarter where they stand.",
        "Choose as many rows as ends, or nothing, so that the whole motif is turned.");

    private static EditResult.Refused Refused(string code, string what, string remedy) => new([new Problem(code, "/motif", 0, 0, what, remedy)]);
}
