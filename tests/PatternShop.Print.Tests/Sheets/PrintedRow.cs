using System.Globalization;
using System.Text.RegularExpressions;
using PatternShop.Tests.Shared;
using PatternShop.Weave;

namespace PatternShop.Print.Tests;

/// <summary>A written row as it stands in a file.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Starts">From which side.</param>
/// <param name="Directions">The words that are computed.</param>
/// <param name="Own">The maker's words below them, line by line.</param>
internal sealed record PrintedRow(int Number, string Starts, string Directions, IReadOnlyList<string> Own);

/// <summary>Where a printed row and the definitions part: the row, and the run of the definition, from 1 in the direction of travel, that is not printed so.</summary>
internal sealed record RowDifference(int Row, int Run);

/// <summary>Finds the written rows of a file and holds them against the definitions, which are worked out without the engine.</summary>
internal static partial class PrintedRows
{
    /// <summary>The written rows in reading order: rows of tables under the heading "Rows" that begin with a number.</summary>
    public static IReadOnlyList<PrintedRow> Of(byte[] file) =>
    [
        .. TaggedText.Read(file).Children
            .SkipWhile(node => !(node.Name == "H2" && node.AllText == "Rows"))
            .Skip(1)
            .TakeWhile(node => node.Name != "H2")
            .Where(node => node.Name == "Table")
            .SelectMany(table => table.Children)
            .Where(row => row.Children.Count == 3 && Digits().IsMatch(row.Children[0].AllText))
            .Select(row => new PrintedRow(
                int.Parse(row.Children[0].AllText, NumberStyles.AllowThousands, CultureInfo.InvariantCulture),
                row.Children[1].AllText,
                row.Children[2].Children.FirstOrDefault(node => node.Name == "P")?.AllText ?? row.Children[2].AllText,
                [.. row.Children[2].Children.Where(node => node.Name == "P").Skip(1).Select(node => node.AllText)])),
    ];

    /// <summary>
    /// What differs between the written rows of a file and those that the definitions give for a document; nothing when
    /// the file is right. Every row must be there that a reader needs: repeated rows once, or twice where the second time
    /// differs in a row or in the side at which a stitch begins.
    /// </summary>
    public static IReadOnlyList<RowDifference> Differences(IReadOnlyList<PrintedRow> printed, PatternDocument document)
    {
        var rows = Oracle.Rows(document);
        var needed = Needed(document, rows);
        if (!printed.Select(row => row.Number).SequenceEqual(needed))
        {
            throw new InvalidOperationException($"Printed are rows {string.Join(' ', printed.Select(row => row.Number))}, needed {string.Join(' ', needed)}.");
        }

        return [.. printed.SelectMany(row => Differences(row, rows[row.Number - 1]))];
    }

    private static IEnumerable<RowDifference> Differences(PrintedRow printed, OracleRow row)
    {
        var side = row.From == Side.Left ? "left" : "right";
        var cells = WriteOut(printed.Directions).ToList();
        if (printed.Starts.Trim() != side || cells.Count != row.Over.Count)
        {
            yield return new RowDifference(row.Number, 0);
            yield break;
        }

        var end = 0;
        for (var run = 0; run < row.Runs.Count; end += row.Runs[run].Count, run++)
        {
            if (cells.Skip(end).Take(row.Runs[run].Count).Any(over => over != row.Runs[run].Over))
            {
                yield return new RowDifference(row.Number, run + 1);
            }
        }
    }

    /// <summary>What the weft does at each end that it meets, by the written words or the short form; brackets are woven as often as they say.</summary>
    public static IEnumerable<bool> WriteOut(string directions)
    {
        var plain = IsShort(directions) ? InWords(directions) : directions;
        while (Bracket().IsMatch(plain))
        {
            plain = Bracket().Replace(plain, match => string.Join(", ", Enumerable.Repeat(match.Groups["runs"].Value, Int(match.Groups["times"].Value))));
        }

        foreach (var run in plain.Split(", "))
        {
            var match = Run().Match(run);
            if (!match.Success)
            {
                throw new InvalidOperationException($"'{run}' in '{directions}' is no direction.");
            }

            for (var i = 0; i < Int(match.Groups["count"].Value); i++)
            {
                yield return match.Groups["stroke"].Value == "over";
            }
        }
    }

    /// <summary>Whether a row is in the short form: "u1 [o1 u2] × 3 o1".</summary>
    public static bool IsShort(string directions) => ShortRun().IsMatch(directions);

    // The letters as the heading of the rows explains them; what stands beside each other gets its comma.
    private static string InWords(string directions) => Neighbours().Replace(
        ShortRun().Replace(directions, match => $"{(match.Groups["letter"].Value == "o" ? "over" : "under")} {match.Groups["count"].Value}"),
        ", ");

    private static List<int> Needed(PatternDocument document, IReadOnlyList<OracleRow> rows)
    {
        var needed = new List<int>();
        var stitches = Oracle.Stitches(document);
        var done = 0;
        for (var at = 0; at < document.Rows.Steps.Count; at++)
        {
            var step = document.Rows.Steps[at];
            var each = step is Repeat repeat ? repeat.Steps.Sum(RowsOf) : RowsOf((SimpleStep)step);
            var times = step is Repeat again ? again.Times : 1;
            var turned = !Sides(at, 1).SequenceEqual(Sides(at, 2));
            var twice = times > 1 && (turned || Enumerable.Range(done, each).Any(i => !ReadAlike(rows[i], rows[i + each])));
            needed.AddRange(Enumerable.Range(done + 1, each * (twice ? 2 : 1)));
            for (var i = done; i < done + (each * times); i++)
            {
                var stands = done + ((i - done) % (each * (twice ? 2 : 1)));
                if (!ReadAlike(rows[i], rows[stands]))
                {
                    throw new InvalidOperationException($"Row {i + 1} reads like no printed row.");
                }
            }

            done += each * times;
        }

        return needed;

        IEnumerable<Side> Sides(int step, int time) => stitches.Where(stitch => stitch.Step == step && stitch.Time == time).Select(stitch => stitch.From);
    }

    private static bool ReadAlike(OracleRow one, OracleRow other) => one.From == other.From && one.Over.SequenceEqual(other.Over);

    private static int RowsOf(SimpleStep step) => step switch
    {
        ChartRows chart => Math.Abs(chart.Last - chart.First) + 1,
        PlainRows plain => plain.Count,
        _ => 0,
    };

    private static int Int(string digits) => int.Parse(digits, NumberStyles.AllowThousands, CultureInfo.InvariantCulture);

    [GeneratedRegex("^[0-9,]+$", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Digits();

    [GeneratedRegex(@"[\[(](?<runs>[^\[\]()]*)[\])] × (?<times>[0-9]+(,[0-9]{3})*)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bracket();

    [GeneratedRegex(@"(?<![a-z])(?<letter>[ou])(?<count>[0-9]+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ShortRun();

    [GeneratedRegex(@"(?<=[0-9]) (?=[ou\[(])", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Neighbours();

    [GeneratedRegex("^(?<stroke>over|under) (?<count>[0-9,]+)$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Run();
}
