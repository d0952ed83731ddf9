using System.Text;

namespace PatternShop.Weave;

/// <summary>What a pasted table of cells holds, before it is said what its filled cells mean.</summary>
public abstract record PastedCells
{
    private PastedCells()
    {
    }

    /// <summary>
    /// Cells that were read. Whether a filled cell is over or under, and which of its lines is row 1, is for the maker to say.
    /// </summary>
    /// <param name="Filled">Lines × columns as they were pasted, the first line first; true where something is written.</param>
    /// <param name="FilledUp">Lines, from 1, that were shorter than the longest and were filled up with empty cells at the right.</param>
    /// <param name="Texts">The distinct texts of filled cells, the most frequent first, at most ten, each with the number of its cells.</param>
    public sealed record Table(BitGrid Filled, Sequence<int> FilledUp, Sequence<CellText> Texts) : PastedCells
    {
        /// <summary>The chart, once it is said what filled cells mean and where row 1 is.</summary>
        public BitGrid Motif(Stroke filled, RowOne rowOne) => BitGrid.Create(Filled.Rows, Filled.Columns, (row, end) =>
            Filled[rowOne == RowOne.Top ? row : Filled.Rows - 1 - row, end] == (filled == Stroke.Over));
    }

    /// <summary>The text is no table of cells.</summary>
    public sealed record Refused(Sequence<Problem> Problems) : PastedCells;

    /// <summary>
    /// Reads cells copied out of a spreadsheet: a line a row, columns parted by tabs, cells with tabs, line ends or quotation marks in them
    /// between quotation marks, and these doubled inside. A cell with nothing but blanks is empty.
    /// </summary>
    public static PastedCells Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var problems = new BeginText();
        if (text.Length > BeginText.Longest)
        {
            problems.Add(BeginProblemCodes.TextTooLong, 0, 0, $"The text has {Plain.Number(text.Length)} characters.", $"Stay within {Plain.Number(BeginText.Longest)}.");
            return new Refused(problems.Problems);
        }

        var lines = CellLines.Read(text, problems);
        return problems.IsFine ? Of(lines, problems) : new Refused(problems.Problems);
    }

    private static PastedCells Of(List<CellLine> lines, BeginText problems)
    {
        var width = lines.Count == 0 ? 0 : lines.Max(line => line.Cells.Count);
        var filled = lines.Sum(line => line.Cells.Count(cell => cell.Length > 0));
        if (lines.Count == 0)
        {
            problems.Add(BeginProblemCodes.CellsEmpty, 1, 1, "Nothing was pasted.", "Copy the cells of the chart and paste them again.");
        }
        else if (filled == 0)
        {
            problems.Add(
                BeginProblemCodes.CellsBlank,
                1,
                1,
                $"All {Plain.Count(lines.Count * width, "cell")} are empty. Colours are not pasted, only what is written in the cells.",
                "Write a sign such as x into every coloured cell, copy them and paste them again.");
        }

        if (lines.Count > Bounds.MotifRows)
        {
            problems.Add(BeginProblemCodes.CellsTooManyRows, lines[Bounds.MotifRows].Line, 1, $"There are {Plain.Count(lines.Count, "row")} of cells.", $"Copy at most {Plain.Number(Bounds.MotifRows)} rows.");
        }

        if (width > Bounds.MotifEnds)
        {
            var wide = lines.First(line => line.Cells.Count > Bounds.MotifEnds);
            problems.Add(BeginProblemCodes.CellsTooWide, wide.Line, 1, $"This row has {Plain.Number(wide.Cells.Count)} cells.", $"Copy at most {Plain.Number(Bounds.MotifEnds)} columns.");
        }

        return problems.IsFine ? Made(lines, width) : new Refused(problems.Problems);
    }

    private static Table Made(List<CellLine> lines, int width) => new(
        BitGrid.Create(lines.Count, width, (row, end) => end < lines[row].Cells.Count && lines[row].Cells[end].Length > 0),
        lines.Where(line => line.Cells.Count < width).Select(line => line.Line).ToSequence(),
        lines.SelectMany(line => line.Cells).Where(cell => cell.Length > 0)
            .CountBy(cell => cell, StringComparer.Ordinal)
            .OrderByDescending(cell => cell.Value)
            .ThenBy(cell => cell.Key, StringComparer.Ordinal)
            .Take(10)
            .Select(cell => new CellText(cell.Key, cell.Value))
            .ToSequence());
}

/// <summary>A text that stands in pasted cells, and in how many.</summary>
public sealed record CellText(string Text, int Cells);

/// <summary>The cells of one row, without blanks around them.</summary>
internal sealed record CellLine(int Line, List<string> Cells);

/// <summary>Parts pasted text into rows of cells.</summary>
internal static class CellLines
{
    public static List<CellLine> Read(string text, BeginText problems)
    {
        var source = text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').TrimStart('\uFEFF');
        var rows = new List<CellLine>();
        var (at, line, begin) = (0, 1, 0);
        while (at < source.Length)
        {
            var row = new CellLine(line, []);
            while (true)
            {
                var (cell, next, ends) = Cell(source, at);
                if (cell is null)
                {
                    problems.Add(BeginProblemCodes.CellsQuote, line, at - begin + 1, "A quotation mark begins this cell and none ends it.", "Copy the cells anew, or take the quotation mark out of this one.");
                    return rows;
                }

                row.Cells.Add(cell.Trim());
                for (var i = at; i < next; i++)
                {
                    if (source[i] == '\n')
                    {
                        (line, begin) = (line + 1, i + 1);
                    }
                }

                at = next;
                if (ends)
                {
                    break;
                }
            }

            rows.Add(row);
        }

        return rows;
    }

    // The text of the cell, where the next one begins, and whether it is the last of its row; no text where a quotation mark is missing.
    private static (string? Text, int Next, bool Ends) Cell(string source, int at)
    {
        var text = new StringBuilder();
        if (at < source.Length && source[at] == '"')
        {
            at++;
            while (true)
            {
                var mark = at < source.Length ? source.IndexOf('"', at) : -1;
                if (mark < 0)
                {
                    return (null, at, true);
                }

                text.Append(source, at, mark - at);
                at = mark + 1;
                if (at >= source.Length || source[at] != '"')
                {
                    break;
                }

                text.Append('"');
                at++;
            }
        }

        var end = source.AsSpan(at).IndexOfAny('\t', '\n');
        end = end < 0 ? source.Length : at + end;
        text.Append(source, at, end - at);
        return end < source.Length && source[end] == '\t' ? (text.ToString(), end + 1, false) : (text.ToString(), Math.Min(source.Length, end + 1), true);
    }
}
