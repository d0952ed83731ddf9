namespace PatternShop.Weave;

public partial class Wording
{
    public virtual string LostRowTitle => "I lost my row";

    public virtual string LostRowText => "Look at the row you wove last and read its first runs.";

    public virtual string LostReadLabel => "I read it";

    public virtual string LostRowLabel => "First runs of the row woven last";

    public virtual string LostBelowLabel => "First runs of the row below it, if you looked";

    /// <summary>How runs are typed.</summary>
    public string LostTypedHint => $"{ShortLegend}: {ShortRuns([new Run(Stroke.Over, 2), new Run(Stroke.Under, 1)])}";

    public virtual string LostFindLabel => "Find my row";

    public virtual string LostTakeBackLabel => "Take back";

    public virtual string LostStayLabel => "Stay where I am";

    /// <summary>What is asked while the row woven last is read.</summary>
    public virtual string LostAskRow => "In the row woven last, what does the weft do next?";

    /// <summary>What is asked while the row below is read.</summary>
    public virtual string LostAskBelow => "In the row below it, what does the weft do next?";

    public virtual string LostLookBelow => "Look at the row below it too";

    /// <summary>How many rows begin so; the name in braces stands for the number.</summary>
    public virtual string LostManyForm => "{count} rows begin so.";

    public virtual string LostOneText => "One row begins so.";

    public virtual string LostNoneText => "No row begins so.";

    /// <summary>What is said where only the place in the whole can tell rows apart.</summary>
    public virtual string LostAlikeText => "They and the rows below them look alike. Count how often they are woven.";

    /// <summary>Where to go on after a row; the names in braces stand for its place and the number of the next row.</summary>
    public virtual string LostGoOnForm => "{place}: go on with row {next}";

    /// <summary>Where to go on after the last row.</summary>
    public virtual string LostLastForm => "{place}: the last row";

    /// <summary>How many more rows begin so than are listed; the name in braces stands for the number.</summary>
    public virtual string LostMoreForm => "and {count} more: read on, or look at the row below";

    /// <summary>What is said of typed runs that are none.</summary>
    public virtual string LostNotRunsForm => "“{text}” is not read as runs. Write each run as a letter and a number.";

    /// <summary>How many rows begin as the runs that were read.</summary>
    public string LostCount(int count) => count switch
    {
        0 => LostNoneText,
        1 => LostOneText,
        _ => LostManyForm.Replace("{count}", Number(count), StringComparison.Ordinal),
    };

    /// <summary>A row that may have been woven last, and where to go on: "Row 4 of 10 · time 2 of 3 (row 14 of 32): go on with row 15".</summary>
    public string LostGoOn(Piece piece, int row)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return (row < piece.Rows.Count ? LostGoOnForm : LostLastForm)
            .Replace("{place}", PlaceText(piece, row), StringComparison.Ordinal)
            .Replace("{next}", Number(row + 1), StringComparison.Ordinal);
    }
}
