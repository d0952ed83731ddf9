using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Text to begin from, and how it is to be read; what one way holds stays while another is chosen.</summary>
/// <param name="Rows">Written rows.</param>
/// <param name="RowsOne">Where row 1 of them stands.</param>
/// <param name="From">In which direction they are written.</param>
/// <param name="Cells">Cells out of a spreadsheet.</param>
/// <param name="CellsOne">Which line of them is row 1; null until the maker says.</param>
/// <param name="Filled">What a filled cell means; null until the maker says.</param>
public sealed record BegunText(
    string Rows = "",
    RowOne RowsOne = RowOne.Top,
    RunsFrom From = RunsFrom.Left,
    string Cells = "",
    RowOne? CellsOne = null,
    Stroke? Filled = null)
{
    /// <summary>
    /// Characters of a text that is taken: charts of about 50 by 50 cells. A change of a field is one message that holds its text twice, and
    /// a sign takes up to six bytes in it, a tab four; even the hub's own bound of 32 kB, far below ours, takes cells of that many.
    /// </summary>
    public const int Most = 5_000;

    /// <summary>Pointer of what is asked about filled cells.</summary>
    public const string FilledAsked = "/filled";

    /// <summary>Pointer of what is asked about row 1.</summary>
    public const string RowOneAsked = "/row-one";

    /// <summary>The cells that were pasted; null when they are no table.</summary>
    public PastedCells.Table? Table => Cells.Length <= Most ? PastedCells.Read(Cells) as PastedCells.Table : null;

    public WeaveResult MakeRows() => TooLong(Rows) ?? TypedRuns.Read(Rows, RowsOne, From);

    public WeaveResult MakeCells() => TooLong(Cells) ?? PastedCells.Read(Cells) switch
    {
        PastedCells.Refused refused => new WeaveResult.Refused(refused.Problems),
        PastedCells.Table table when Filled is { } filled && CellsOne is { } rowOne => new WeaveResult.Made(table.Motif(filled, rowOne)),
        _ => new WeaveResult.Refused(Asked().ToSequence()),
    };

    // the browser cuts what is longer, and a chart that lacks its end would pass for the whole
    private static WeaveResult? TooLong(string text) => text.Length <= Most ? null : new WeaveResult.Refused([new Problem(
        BeginProblemCodes.TextTooLong,
        "",
        0,
        0,
        $"The text has more than {Wording.English.Number(Most)} characters, and only so many are taken at a time.",
        "Paste fewer cells or rows. Take a large chart in parts: choose a part of the motif, paste what goes there and cover what is chosen.")]);

    private IEnumerable<Problem> Asked()
    {
        if (Filled is null)
        {
            yield return new Problem("", FilledAsked, 0, 0, "A spreadsheet does not say it.", "Choose over or under.");
        }

        if (CellsOne is null)
        {
            yield return new Problem("", RowOneAsked, 0, 0, "A spreadsheet does not say it.", "Choose top or bottom.");
        }
    }
}
