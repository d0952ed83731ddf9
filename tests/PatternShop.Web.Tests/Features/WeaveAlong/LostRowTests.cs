using System.Globalization;
using AngleSharp.Dom;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The row that was lost, found without the script, against the oracle's rows.</summary>
public sealed class LostRowTests(WebServer server)
{
    private const string Page = "/samples/hazel-diamonds/weave";

    private static readonly PatternDocument Diamonds = ((ReadResult.Read)PatternReader.Read(File.ReadAllBytes(SamplePages.File("hazel-diamonds")))).Document;

    [Theory]
    [InlineData(Side.Left, 1)]
    [InlineData(Side.Right, 2)]
    [InlineData(Side.Left, 6)]
    public async Task The_form_lists_exactly_the_rows_that_begin_so(Side side, int row)
    {
        var rows = Oracle.Rows(Diamonds);
        foreach (var runs in new[] { 1, 3, 100 })
        {
            var typed = Read(rows[row], side, runs);
            var below = Read(rows[row - 1], side, 2);
            var alone = rows.Where(other => Read(other, side, runs) == typed).Select(other => other.Number).ToList();
            var both = alone.Where(number => number > 1 && Read(rows[number - 2], side, 2) == below).ToList();
            await AssertAnswer($"side={Name(side)}&row={Uri.EscapeDataString(typed)}", alone);
            await AssertAnswer($"side={Name(side)}&row={Uri.EscapeDataString(typed)}&below={Uri.EscapeDataString(below)}", both);
        }
    }

    [Fact]
    public async Task Each_candidate_leads_to_the_row_to_go_on_with()
    {
        var rows = Oracle.Rows(Diamonds);
        var page = (await server.Get($"{Page}?row={Uri.EscapeDataString(Read(rows[0], Side.Left, 3))}")).Page();
        var first = page.QuerySelector("details.lost li a")!;
        Assert.Contains("go on with row 2", first.TextContent, StringComparison.Ordinal);
        Assert.Contains("Row 2", page.QuerySelector(first.GetAttribute("href")!)!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_typed_wrongly_or_begins_no_row_is_said_and_kept()
    {
        var wrong = (await server.Get(Page + "?row=" + Uri.EscapeDataString("x<2>"))).Page();
        Assert.Equal("“x<2>” is not read as runs. Write each run as a letter and a number.", wrong.QuerySelector("details.lost .care")!.TextContent);
        Assert.Equal("x<2>", wrong.QuerySelector("#lost-row")!.GetAttribute("value"));
        var none = (await server.Get(Page + "?row=o900")).Page();
        Assert.Equal(("No row begins so.", 0), (none.QuerySelector("#lost-answer")!.TextContent, none.QuerySelectorAll("details.lost li").Length));
        Assert.Empty(PageRules.Faults(none));
    }

    [Fact]
    public async Task Nobody_who_asks_nothing_is_answered()
    {
        var page = (await server.Get(Page)).Page();
        Assert.False(page.QuerySelector("details.lost")!.HasAttribute("open"));
        Assert.Null(page.QuerySelector("#lost-answer"));
    }

    private async Task AssertAnswer(string query, List<int> expected)
    {
        var page = (await server.Get($"{Page}?{query}")).Page();
        Assert.Equal(
            expected.Take(12),
            page.QuerySelectorAll("details.lost li a").Select(link => int.Parse(link.GetAttribute("data-row")!, CultureInfo.InvariantCulture)));
        Assert.Equal(Wording.English.LostCount(expected.Count), page.QuerySelector("#lost-answer")!.TextContent);
    }

    private static string Name(Side side) => side == Side.Left ? "left" : "right";

    private static string Read(OracleRow row, Side side, int runs) => string.Join(' ', (row.From == side ? row.Runs : row.Runs.Reverse())
        .Take(runs).Select(run => string.Create(CultureInfo.InvariantCulture, $"{(run.Over ? 'o' : 'u')}{run.Count}")));
}
