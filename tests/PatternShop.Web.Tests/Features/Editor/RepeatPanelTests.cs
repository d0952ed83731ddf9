using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class RepeatPanelTests(SharedBench shared) : IClassFixture<SharedBench>
{
    // "Whole pieces" 1 of the outside values: the fewest balance ends are 1, at offsets 0 and 5. Common practice, no source: rows 1-10, then row 1.
    private static readonly PatternDocument Diamond = Charts.Document(Charts.TenEndDiamond, repeats: 3, steps: new Repeat(3, [new ChartRows(1, 10, 1)]));

    [Fact]
    public async Task Repeat_mirrors_and_counts_are_said_in_words()
    {
        await using var panel = await OpenAsync(Diamond);
        Assert.Contains("The smallest repeat is 10 ends by 10 rows.", panel.Page.Markup, StringComparison.Ordinal);
        Assert.Contains("Left and right mirror on ends 1 and 6.", panel.Page.Markup, StringComparison.Ordinal);
        Assert.Equal("Ends: a multiple of 10. Rows: a multiple of 10.", panel.Page.Find(".rule").TextContent);
    }

    [Fact]
    public async Task Every_way_to_mirror_is_one_touch_and_one_step_of_undo()
    {
        await using var panel = await OpenAsync(Diamond);
        Assert.Equal(["Begin at end 1 with 1 balance end", "Begin at end 6 with 1 balance end", "Weave 1 closing row"], Proposals(panel));
        Assert.StartsWith("End 1 of the motif is in the middle. 31 ends in all instead of 30: a multiple of 10, plus 1.", Why(panel, 1), StringComparison.Ordinal);
        await panel.PressAsync("Begin at end 6 with 1 balance end");
        Assert.Equal(Diamond with { Width = Diamond.Width with { Offset = 5, Balance = 1 } }, panel.Document);
        Assert.Equal("begin at end 6 with 1 balance end", panel.Editing.View.UndoName);
        panel.Page.WaitForAssertion(() => Assert.Equal(["Begin at end 1 with 1 balance end", "Weave 1 closing row"], Proposals(panel)));
        Assert.Contains("Begin at end 6 with 1 balance end (as it is now)", panel.Page.Markup, StringComparison.Ordinal);
        await panel.Editing.UndoAsync();
        Assert.Equal(Diamond, panel.Document);
    }

    [Fact]
    public async Task Closing_rows_are_one_touch_and_then_nothing_is_left_to_close()
    {
        await using var panel = await OpenAsync(Diamond);
        Assert.Equal("1 closing row makes top and bottom mirror. The order is then: (chart rows 1–10) 3 times, chart row 1.", Why(panel, 2));
        await panel.PressAsync("Weave 1 closing row");
        Assert.Equal(Diamond with { Rows = Diamond.Rows with { Steps = [Diamond.Rows.Steps[0], new ChartRows(1, 1, 1)] } }, panel.Document);
        Assert.Equal("weave 1 closing row", panel.Editing.View.UndoName);
        panel.Page.WaitForAssertion(() => Assert.DoesNotContain("Weave 1 closing row", Proposals(panel)));
        await panel.Editing.UndoAsync();
        Assert.Equal(Diamond, panel.Document);
    }

    [Fact]
    public async Task A_longer_order_of_rows_is_written_with_the_fewest_items()
    {
        var written = Diamond with { Rows = Diamond.Rows with { Steps = [.. Enumerable.Repeat(new ChartRows(1, 10, 1), 3), new ChartRows(1, 1, 1)] } };
        await using var panel = await OpenAsync(written);
        Assert.Equal("The same rows in the same order, with 3 items instead of 4. The order is then: (chart rows 1–10) 3 times, chart row 1.", Why(panel, 2));
        await panel.PressAsync("Write the order of rows with 3 items");
        Assert.Equal(Diamond with { Rows = Diamond.Rows with { Steps = [Diamond.Rows.Steps[0], new ChartRows(1, 1, 1)] } }, panel.Document);
        Assert.Equal("write the order of rows with 3 items", panel.Editing.View.UndoName);
    }

    [Fact]
    public async Task What_is_proposed_follows_the_pattern_and_leaves_the_rest_of_the_width_alone()
    {
        await using var panel = await OpenAsync(Diamond);
        await panel.Editing.MakeAsync(new SetWidth(Diamond.Width with { Repeats = 2 }));
        panel.Page.WaitForAssertion(() => Assert.Contains("21 ends in all instead of 20", Why(panel, 0), StringComparison.Ordinal));
        await panel.PressAsync("Begin at end 1 with 1 balance end");
        Assert.Equal(new WidthPlan(2, 0, 1, null), panel.Document.Width);
    }

    [Fact]
    public async Task Nothing_is_proposed_where_nothing_would_change()
    {
        await using var plain = await OpenAsync(Charts.Document("xx.x../x...../......", repeats: 2));
        Assert.Contains("Left and right do not mirror.", plain.Page.Markup, StringComparison.Ordinal);
        Assert.Empty(Proposals(plain));
        Assert.Empty(plain.Page.FindAll("h3"));
    }

    [Fact]
    public async Task An_empty_chart_says_so_and_a_stroke_changes_what_is_said()
    {
        await using var panel = await PanelHost<RepeatPanel>.OpenAsync(shared.Bench, Charts.Document("..../....", repeats: 2));
        panel.Page.WaitForAssertion(() => Assert.Equal("Nothing is drawn yet.", panel.Page.Find(".hint").TextContent));
        Assert.Empty(Proposals(panel));
        await panel.Editing.MakeAsync(TestBench.Stroke(panel.Document.Motif, (0, 0, true), (0, 2, true), (1, 1, true), (1, 3, true)));
        panel.Page.WaitForAssertion(() => Assert.Contains("The smallest repeat is 2 ends by 2 rows; 1 row further up it is the same, 1 end to the right.", panel.Page.Markup, StringComparison.Ordinal));
        Assert.Equal("and 2 more beginnings that look the same", panel.Page.FindAll(".hint").Single().TextContent);
    }

    private async Task<PanelHost<RepeatPanel>> OpenAsync(PatternDocument document)
    {
        var panel = await PanelHost<RepeatPanel>.OpenAsync(shared.Bench, document);
        panel.Page.WaitForAssertion(() => Assert.NotEmpty(panel.Page.FindAll(".rule")));
        return panel;
    }

    private static List<string> Proposals(PanelHost<RepeatPanel> panel) => [.. panel.Page.FindAll(".proposals button").Select(button => button.TextContent.Trim())];

    private static string Why(PanelHost<RepeatPanel> panel, int at) => panel.Page.FindAll(".proposals .why")[at].TextContent;
}
