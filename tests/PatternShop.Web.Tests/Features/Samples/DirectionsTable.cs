using System.Globalization;
using AngleSharp.Dom;
using PatternShop.Tests.Shared;
using PatternShop.Weave;

namespace PatternShop.Web.Tests;

/// <summary>A row as a page writes it.</summary>
internal sealed record WrittenTableRow(int Number, string From, string Runs);

/// <summary>The table of written rows of a page.</summary>
internal static class DirectionsTable
{
    public static IReadOnlyList<WrittenTableRow> Rows(IParentNode page) =>
    [
        .. page.QuerySelectorAll("table.rows tbody tr").Select(row => new WrittenTableRow(
            int.Parse(row.QuerySelector("th")!.ChildNodes.OfType<IText>().First().TextContent, CultureInfo.InvariantCulture),
            row.QuerySelector("td.from")!.TextContent,
            Written(row.QuerySelector("td.runs")!))),
    ];

    /// <summary>Directions as they are seen; where they have brackets, ears are given other words. A space that a line may not break at looks like any other.</summary>
    public static string Written(IElement cell) => (cell.QuerySelector("[aria-hidden=true]") ?? cell).TextContent.Replace('\u00A0', ' ');

    /// <summary>Numbers of the written rows that do not say what is woven, and of woven rows that no written row stands for.</summary>
    public static IReadOnlyList<int> Differences(IReadOnlyList<WrittenTableRow> written, IReadOnlyList<OracleRow> woven) =>
    [
        .. written.Where(row => !Same(row, woven[row.Number - 1])).Select(row => row.Number),
        .. woven.Where(row => !written.Any(other => Same(other, row))).Select(row => row.Number).Where(number => written.All(row => row.Number != number)),
    ];

    private static bool Same(WrittenTableRow written, OracleRow woven) =>
        written.From == (woven.From == Side.Left ? "from the left →" : "← from the right")
        && WrittenRuns.Strokes(written.Runs).SequenceEqual(WrittenRuns.Strokes(woven.Runs));
}
