namespace PatternShop.Weave;

/// <summary>At which end of a list of rows row 1 stands.</summary>
public enum RowOne
{
    /// <summary>The first line is row 1, as in written directions.</summary>
    Top,

    /// <summary>The last line is row 1, as in a chart.</summary>
    Bottom,
}

/// <summary>In which direction the runs of rows are written.</summary>
public enum RunsFrom
{
    /// <summary>Every row from the left.</summary>
    Left,

    /// <summary>Every row from the right.</summary>
    Right,

    /// <summary>As the weft travels, row 1 from the left.</summary>
    InTurnFromLeft,

    /// <summary>As the weft travels, row 1 from the right.</summary>
    InTurnFromRight,
}

/// <summary>
/// Reads runs that were typed or pasted: "o2 u2 / u1 o2 u1" or "over 2, under 2", a row a line or rows parted by "/", brackets as in the
/// product's own directions ("[over 1, under 2] × 3"; "x 3", "* 3", "3 times" and "twice" as well) up to two levels deep. A run without a
/// number is one end. A line may begin with a heading that ends with ":"; where it says "from the left" or "from the right", that
/// holds for its row. Lines without runs are passed over.
/// </summary>
public static class TypedRuns
{
    /// <summary>The chart of the rows, or everything that is wrong with the text, by line and column.</summary>
    /// <param name="text">The text.</param>
    /// <param name="rowOne">Where row 1 stands.</param>
    /// <param name="from">In which direction rows without a heading are written.</param>
    public static WeaveResult Read(string text, RowOne rowOne, RunsFrom from)
    {
        ArgumentNullException.ThrowIfNull(text);
        var problems = new BeginText();
        if (text.Length > BeginText.Longest)
        {
            problems.Add(BeginProblemCodes.TextTooLong, 0, 0, $"The text has {Plain.Number(text.Length)} characters.", $"Stay within {Plain.Number(BeginText.Longest)}.");
            return new WeaveResult.Refused(problems.Problems);
        }

        var rows = Rows(text, problems);
        if (problems.IsFine)
        {
            CheckSize(rows, problems);
        }

        return problems.IsFine ? new WeaveResult.Made(Chart(rows, rowOne, from)) : new WeaveResult.Refused(problems.Problems);
    }

    private static List<RunsLine> Rows(string text, BeginText problems)
    {
        var rows = new List<RunsLine>();
        foreach (var (index, line) in BeginText.Lines(text).Index())
        {
            var begin = 0;
            foreach (var part in line.Split('/'))
            {
                if (new RunsLineReader(part, index + 1, begin + 1, problems).Read() is { } row)
                {
                    rows.Add(row);
                }

                begin += part.Length + 1;
            }
        }

        return rows;
    }

    private static void CheckSize(List<RunsLine> rows, BeginText problems)
    {
        if (rows.Count == 0)
        {
            problems.Add(BeginProblemCodes.RunsEmpty, 1, 1, "There are no runs in the text.", "Write a row a line, such as: over 2, under 2.");
            return;
        }

        if (rows.Count > Bounds.MotifRows)
        {
            var row = rows[Bounds.MotifRows];
            problems.Add(BeginProblemCodes.RunsTooManyRows, row.Line, row.Column, $"There are {Plain.Count(rows.Count, "row")}.", $"Stay within {Plain.Number(Bounds.MotifRows)} rows.");
        }

        // the length that most rows have is the one that was meant; the first of several
        var meant = rows.GroupBy(row => row.Ends).MaxBy(group => group.Count())!.First();
        foreach (var row in rows.Where(row => row.Ends != meant.Ends))
        {
            problems.Add(
                BeginProblemCodes.RunsRowLength,
                row.Line,
                row.Column,
                $"This row has {Plain.Count(row.Ends, "end")}, the one of line {Plain.Number(meant.Line)} has {Plain.Number(meant.Ends)}.",
                $"Make its runs add up to {Plain.Number(meant.Ends)}.");
        }
    }

    private static BitGrid Chart(List<RunsLine> rows, RowOne rowOne, RunsFrom from)
    {
        if (rowOne == RowOne.Bottom)
        {
            rows.Reverse();
        }

        var ends = rows[0].Ends;
        var cells = rows.Select((row, i) => row.Cells(row.From ?? Direction(from, i))).ToList();
        return BitGrid.Create(rows.Count, ends, (row, end) => cells[row][end]);
    }

    private static Side Direction(RunsFrom from, int row) => from switch
    {
        RunsFrom.Left => Side.Left,
        RunsFrom.Right => Side.Right,
        RunsFrom.InTurnFromLeft => row % 2 == 0 ? Side.Left : Side.Right,
        _ => row % 2 == 0 ? Side.Right : Side.Left,
    };
}

/// <summary>A row as it was typed.</summary>
internal sealed record RunsLine(int Line, int Column, Side? From, Sequence<Run> Runs)
{
    public int Ends { get; } = Runs.Sum(run => run.Count);

    /// <summary>The cells from the left, true for over.</summary>
    public List<bool> Cells(Side from)
    {
        var cells = Runs.SelectMany(run => Enumerable.Repeat(run.Stroke == Stroke.Over, run.Count)).ToList();
        if (from == Side.Right)
        {
            cells.Reverse();
        }

        return cells;
    }
}
