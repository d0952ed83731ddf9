using System.Globalization;
using System.Text;

namespace PatternShop.Benchmarks;

/// <summary>What README.md holds: runs, and the cases and figures that they measured. It is read back so that a run of some classes keeps the others.</summary>
internal sealed record Report(IReadOnlyList<Run> Runs, IReadOnlyList<Measured> Cases, IReadOnlyList<Figure> Figures)
{
    private const string CaseRow = "| ";

    public static Report Empty { get; } = new([], [], []);

    /// <summary>With the classes that were measured now in place of what they were before; runs of which nothing is left fall away.</summary>
    public Report With(IReadOnlyList<Measured> measured, IReadOnlyList<Figure> figured, Run run)
    {
        var classes = measured.Select(now => now.Class).Concat(figured.Select(now => now.Class)).ToHashSet(StringComparer.Ordinal);
        var cases = Cases.Where(old => !classes.Contains(old.Class)).Concat(measured.Select(now => now with { Run = Runs.Count + 1 })).ToList();
        var figures = Figures.Where(old => !classes.Contains(old.Class)).Concat(figured.Select(now => now with { Run = Runs.Count + 1 })).ToList();
        var runs = Runs.Append(run).ToList();
        var used = cases.Select(one => one.Run).Concat(figures.Select(one => one.Run)).Distinct().Order().ToList();
        return new Report(
            [.. used.Select(number => runs[number - 1])],
            [.. cases.Select(one => one with { Run = used.IndexOf(one.Run) + 1 }).OrderBy(one => one.Class, StringComparer.Ordinal)],
            [.. figures.Select(one => one with { Run = used.IndexOf(one.Run) + 1 }).OrderBy(one => one.Class, StringComparer.Ordinal)]);
    }

    public string Markdown()
    {
        var text = new StringBuilder();
        text.Append("""
            # Benchmarks

            Written by the program, not by hand: `dotnet run -c Release --project tests/PatternShop.Benchmarks -- --filter '*'`. A run of some
            classes (`--filter '*Symmetry*'`) writes their rows anew and keeps the others. Medians and errors (half of the 99.9 % confidence
            interval of the mean) are in microseconds, memory allocated each time in kilobytes (no more than that is ever held at once), files in bytes. Large errors say
            that the machine did other work meanwhile.
            Figures of drawing are taken in Chromium on the program as it is published, with a chart of 200 × 200 cells without order, which nothing makes smaller.

            ## Targets

            | target | measured |
            |---|---|

            """);
        foreach (var target in Target.All)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {target.Text} | {target.Verdict(Cases, Figures)} |\n");
        }

        text.Append("\n## Cases\n\n| class | size | case | median | error | memory | file | run |\n|---|---|---|--:|--:|--:|--:|--:|\n");
        foreach (var one in Cases)
        {
            text.Append(CultureInfo.InvariantCulture, $"{CaseRow}{one.Class} | {one.Size} | {one.Case} | {Number(one.Median)} | {Number(one.Error)} | {Number(one.Kilobytes)} | {(one.Bytes > 0 ? one.Bytes : "")} | {one.Run} |\n");
        }

        text.Append("\n## Figures\n\n| class | what | value | unit | samples | run |\n|---|---|--:|---|--:|--:|\n");
        foreach (var one in Figures)
        {
            text.Append(CultureInfo.InvariantCulture, $"{CaseRow}{one.Class} | {one.What} | {Number(one.Value)} | {one.Unit} | {one.Samples} | {one.Run} |\n");
        }

        text.Append("\n## Runs\n\n| run | date | commit | machine |\n|--:|---|---|---|\n");
        for (var i = 0; i < Runs.Count; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{CaseRow}{i + 1} | {Runs[i].Date} | {Runs[i].Commit} | {Runs[i].Machine} |\n");
        }

        return text.ToString();
    }

    public static Report Read(string markdown)
    {
        var tables = markdown.Split("\n## ").ToDictionary(part => part.Split('\n')[0].Trim(), part => part.Split('\n'), StringComparer.Ordinal);
        string[][] Rows(string table) => !tables.TryGetValue(table, out var lines)
            ? []
            : [.. lines.Where(line => line.StartsWith(CaseRow, StringComparison.Ordinal)).Skip(1).Select(line => line.Split('|')[1..^1].Select(cell => cell.Trim()).ToArray())];
        return new Report(
            [.. Rows("Runs").Select(cells => new Run(cells[1], cells[2], cells[3]))],
            [.. Rows("Cases").Select(cells => new Measured(cells[0], cells[1], cells[2], Parse(cells[3]), Parse(cells[4]), Parse(cells[5]), cells.Length > 7 && cells[6].Length > 0 ? (int)Parse(cells[6]) : 0, (int)Parse(cells[^1])))],
            [.. Rows("Figures").Select(cells => new Figure(cells[0], cells[1], Parse(cells[2]), cells[3], (int)Parse(cells[4]), (int)Parse(cells[5])))]);
    }

    // Three digits that mean something, or all before the point.
    private static string Number(double value) => value switch
    {
        0 => "0",
        >= 100 => value.ToString("0", CultureInfo.InvariantCulture),
        >= 10 => value.ToString("0.0", CultureInfo.InvariantCulture),
        >= 1 => value.ToString("0.00", CultureInfo.InvariantCulture),
        _ => value.ToString("0.000", CultureInfo.InvariantCulture),
    };

    private static double Parse(string number) => double.Parse(number, CultureInfo.InvariantCulture);
}
