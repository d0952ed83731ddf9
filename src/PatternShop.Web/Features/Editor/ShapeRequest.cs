using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// What the script asks to be done with the shape of the motif, on the motif that it shows. Rows and ends count from 0.
/// </summary>
/// <param name="What">One of the words of <see cref="Edit"/>.</param>
/// <param name="Row">The lowest row that is chosen.</param>
/// <param name="End">The leftmost end that is chosen.</param>
/// <param name="Rows">How many rows are chosen; 0 when nothing is.</param>
/// <param name="Ends">How many ends are chosen; 0 when nothing is.</param>
/// <param name="ByRows">Rows upwards, where something moves.</param>
/// <param name="ByEnds">Ends to the right, where something moves.</param>
internal sealed record ShapeRequest(string What, int Row, int End, int Rows, int Ends, int ByRows = 0, int ByEnds = 0)
{
    private CellRectangle? Box => Rows > 0 && Ends > 0 ? new CellRectangle(Row, End, Rows, Ends) : null;

    /// <summary>The edit; null when nobody knows the word, or it needs cells and none are chosen.</summary>
    public Edit? Edit() => What switch
    {
        "mirrorAcross" => new TransformCells(CellTransform.MirrorAcross, Box),
        "mirrorAlong" => new TransformCells(CellTransform.MirrorAlong, Box),
        "halfTurn" => new TransformCells(CellTransform.HalfTurn, Box),
        "turnFigure" => new TransformCells(CellTransform.TurnFigure, Box),
        "turnCloth" => new TransformCells(CellTransform.TurnCloth, Box),
        "swap" => new TransformCells(CellTransform.Swap, Box),
        "otherSide" => new TransformCells(CellTransform.OtherSide, Box),
        "shift" => new ShiftCells(ByEnds, ByRows, Box),
        "move" when Box is { } box => new MoveCells(box, ByEnds, ByRows),
        "rowsBelow" when Box is not null => new InsertRows(Row + 1, Rows),
        "rowsAbove" when Box is not null => new InsertRows(Row + Rows + 1, Rows),
        "endsLeft" when Box is not null => new InsertEnds(End + 1, Ends),
        "endsRight" when Box is not null => new InsertEnds(End + Ends + 1, Ends),
        "removeRows" when Box is not null => new RemoveRows(Row + 1, Rows),
        "removeEnds" when Box is not null => new RemoveEnds(End + 1, Ends),
        _ => null,
    };
}

/// <summary>What came of it.</summary>
/// <param name="Done">Whether it is in the store.</param>
/// <param name="Words">What was done and what else changed, or why nothing was.</param>
internal sealed record ShapeAnswer(bool Done, IReadOnlyList<string> Words)
{
    public static ShapeAnswer Of(Edit edit, Acknowledgement acknowledgement, Wording wording) => acknowledgement switch
    {
        Acknowledgement.Saved saved => new(true, [$"Done: {wording.EditName(edit)}.", .. saved.Consequences.Select(wording.ConsequenceText)]),
        Acknowledgement.HadAlready => new(true, []),
        Acknowledgement.Refused refused => new(false, [.. refused.Problems.Select(problem => $"{problem.What} {problem.Remedy}")]),
        Acknowledgement.SignedOut => new(false, ["This is not saved: you are signed out. Sign in again."]),
        Acknowledgement.Gone => new(false, ["This is not saved: the pattern was deleted. Go back to my patterns."]),
        _ => new(false, ["This is not saved: the server cannot store it now. Try again in a moment."]),
    };
}
