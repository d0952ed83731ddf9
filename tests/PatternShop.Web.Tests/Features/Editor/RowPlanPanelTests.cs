using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class RowPlanPanelTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private static readonly PatternDocument Diamond = Charts.Document(Charts.TenEndDiamond);

    [Fact]
    public async Task The_plan_of_the_diamond_is_built_step_by_step()
    {
        await using var panel = await OpenAsync(Diamond);
        await panel.PressAsync("repeat");
        await panel.PressAsync("Remove step 1");
        await panel.PressAsync("chart rows");
        await panel.PressAsync("plain rows");
        Assert.Equal([new Repeat(2, [new ChartRows(1, 10, 1), new ChartRows(1, 10, 1), new PlainRows(2, 1)])], panel.Document.Rows.Steps);
        await panel.PressAsync("Remove step 1, part 2");
        await panel.PressAsync("Remove step 1, part 2");
        await panel.TypeAsync("Repeat, times", "3");
        Assert.Equal([new Repeat(3, [new ChartRows(1, 10, 1)])], panel.Document.Rows.Steps);
        Assert.Contains("3 × 10 = 30 rows", panel.Page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Steps_move_and_go()
    {
        await using var panel = await OpenAsync(Diamond, new ChartRows(1, 10, 1), new PlainRows(1, 1), new ChartRows(10, 1, 1));
        await panel.PressAsync("Move step 2 earlier");
        Assert.Equal([new PlainRows(1, 1), new ChartRows(1, 10, 1), new ChartRows(10, 1, 1)], panel.Document.Rows.Steps);
        await panel.PressAsync("Move step 2 later");
        await panel.PressAsync("Remove step 1");
        Assert.Equal([new ChartRows(10, 1, 1), new ChartRows(1, 10, 1)], panel.Document.Rows.Steps);
        Assert.Contains("down to", panel.Labels, StringComparer.Ordinal);
    }

    [Fact]
    public async Task A_plan_that_weaves_nothing_is_refused()
    {
        await using var panel = await OpenAsync(Diamond);
        await panel.PressAsync("Remove step 1");
        Assert.Equal(["The row plan weaves no row. Add chart rows or plain rows."], panel.Notes);
        Assert.Equal(Diamond, panel.Document);
    }

    [Fact]
    public async Task A_row_that_does_not_exist_is_refused_beside_its_field()
    {
        await using var panel = await OpenAsync(Diamond);
        await panel.TypeAsync("to", "11");
        Assert.Equal("There is no row 11: the motif has 10 rows. Choose a row of the motif; the first is 1.", panel.WrongAt("to"));
        Assert.Empty(panel.Notes);
        Assert.Equal("11", panel.ValueOf("to"));
    }

    [Fact]
    public async Task From_and_to_do_not_move_each_other_however_fast_they_are_typed()
    {
        await using var panel = await OpenAsync(Diamond);
        await panel.TypeBothAsync(shared.Bench, ("Chart rows from", "3"), ("to", "6"));
        Assert.Equal([new ChartRows(3, 6, 1)], panel.Document.Rows.Steps);
        await using var repeat = await OpenAsync(Diamond, new Repeat(2, [new ChartRows(1, 8, 1)]));
        await repeat.TypeBothAsync(shared.Bench, ("to", "2"), ("Repeat, times", "3"));
        Assert.Equal([new Repeat(3, [new ChartRows(1, 2, 1)])], repeat.Document.Rows.Steps);
        Assert.Equal(("1", "2", "3"), (repeat.ValueOf("Chart rows from"), repeat.ValueOf("to"), repeat.ValueOf("Repeat, times")));
    }

    [Fact]
    public async Task A_from_above_its_to_stays_and_is_said_to_go_down()
    {
        await using var panel = await OpenAsync(Diamond, new ChartRows(1, 3, 1));
        Assert.Empty(panel.Page.FindAll(".downwards"));
        await panel.TypeAsync("Chart rows from", "7");
        Assert.Equal([new ChartRows(7, 3, 1)], panel.Document.Rows.Steps);
        Assert.Equal(("7", "3"), (panel.ValueOf("Chart rows from"), panel.ValueOf("down to")));
        Assert.Equal("Woven downwards: row 7 first, row 3 last.", panel.Page.Find(".downwards").TextContent);
        await panel.TypeAsync("down to", "8");
        Assert.Equal([new ChartRows(7, 8, 1)], panel.Document.Rows.Steps);
        Assert.Empty(panel.Page.FindAll(".downwards"));
    }

    [Theory]
    [InlineData("Remove step 1")]
    [InlineData("Move step 1 later")]
    public async Task What_is_refused_of_a_step_never_lands_in_the_fields_of_another(string act)
    {
        await using var panel = await OpenAsync(Diamond, new ChartRows(1, 8, 1), new ChartRows(3, 8, 1));
        await panel.TypeAsync("Chart rows from", "ten");
        await panel.TypeAsync("to", "99");
        Assert.Equal(("ten", "99"), (panel.ValueOf("Chart rows from"), panel.ValueOf("to")));
        await panel.PressAsync(act);
        Assert.Equal(("3", "8", ""), (panel.ValueOf("Chart rows from"), panel.ValueOf("to"), panel.WrongAt("Chart rows from")));
        Assert.DoesNotContain(panel.Page.FindAll("input"), field => field.GetAttribute("value") is "99" or "ten");
    }

    [Fact]
    public async Task What_is_refused_stays_while_other_fields_change()
    {
        await using var panel = await OpenAsync(Diamond, new Repeat(2, [new ChartRows(1, 8, 1), new PlainRows(2, 1)]));
        await panel.TypeAsync("to", "99");
        await panel.TypeAsync("Plain rows", "4");
        Assert.Equal(("99", 4), (panel.ValueOf("to"), ((PlainRows)((Repeat)panel.Document.Rows.Steps[0]).Steps[1]).Count));
        await panel.PressAsync("Move step 1, part 1 later");
        Assert.Equal("8", panel.ValueOf("to"));
    }

    [Fact]
    public async Task A_step_is_removed_once_though_its_button_is_pressed_twice()
    {
        await using var panel = await OpenAsync(Diamond, new ChartRows(1, 8, 1), new PlainRows(2, 1), new PlainRows(4, 1));
        using var gate = new ManualResetEventSlim();
        var asked = shared.Bench.Time.HoldAsync(gate);
        var once = panel.PressAsync("Remove step 1");
        await asked;
        var twice = panel.PressAsync("Remove step 1");
        shared.Bench.Time.Go();
        gate.Set();
        await Task.WhenAll(once, twice);
        Assert.Equal([new PlainRows(2, 1), new PlainRows(4, 1)], panel.Document.Rows.Steps);
    }

    [Fact]
    public async Task Several_wefts_are_chosen_step_by_step()
    {
        await using var panel = await OpenAsync(Diamond);
        await panel.ChooseAsync("Row 1 starts at the", "right");
        Assert.DoesNotContain("Weft", panel.Labels, StringComparer.Ordinal);
        await panel.PressAsync("Add a weft");
        await panel.ChooseAsync("Weft", "2");
        Assert.Equal([new Weft(Side.Right), new Weft(Side.Left)], panel.Document.Rows.Wefts);
        Assert.Equal([new ChartRows(1, 10, 2)], panel.Document.Rows.Steps);
        await panel.PressAsync("Remove weft 2");
        Assert.Equal("There is no weft 2: the row plan lists 1 weft. Choose a weft that the row plan lists; the first is 1.", panel.WrongAt("Weft"));
    }

    [Fact]
    public async Task Wefts_that_no_step_uses_are_named()
    {
        await using var panel = await OpenAsync(Diamond);
        Assert.Empty(panel.Page.FindAll(".unused"));
        await panel.PressAsync("Add a weft");
        Assert.Equal("No step uses weft 2, so readers will not see it.", panel.Page.Find(".unused").TextContent.Trim());
        await panel.PressAsync("Add a weft");
        Assert.Equal("No step uses wefts 2 and 3, so readers will not see them.", panel.Page.Find(".unused").TextContent.Trim());
        await panel.ChooseAsync("Weft", "3");
        Assert.Equal("No step uses wefts 1 and 2, so readers will not see them.", panel.Page.Find(".unused").TextContent.Trim());
    }

    [Fact]
    public async Task An_edge_stitch_takes_a_side_or_the_working_weft()
    {
        await using var panel = await OpenAsync(Diamond);
        await panel.PressAsync("edge stitch");
        await panel.ChooseAsync("from the", "right");
        await panel.TypeAsync("Times across", "2");
        Assert.Equal(new EdgeStitch("twining", StitchYarn.Own, 2, Side.Right, 1), panel.Document.Rows.Steps[1]);
        await panel.ChooseAsync("with", "the working weft");
        Assert.Equal(new EdgeStitch("twining", StitchYarn.Working, 2, Side.Left, 1), panel.Document.Rows.Steps[1]);
        Assert.DoesNotContain("from the", panel.Labels, StringComparer.Ordinal);
    }

    [Fact]
    public async Task The_first_plain_row_is_asked_for_only_where_no_floating_end_decides()
    {
        await using var panel = await OpenAsync(Diamond, new PlainRows(2, 1));
        await panel.ChooseAsync("The first plain row goes", "over end 1");
        Assert.Equal(Stroke.Over, panel.Document.Rows.FirstPlain);
        await using var floating = await OpenAsync(Diamond with { Width = Diamond.Width with { Floating = Charts.AlikeUnder } }, new PlainRows(2, 1));
        Assert.DoesNotContain("The first plain row goes", floating.Labels, StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("/rows/steps/0/first", true)]
    [InlineData("/rows/steps/1/steps/0/count", true)]
    [InlineData("/rows/steps/1/steps/1/count", false)]
    [InlineData("/rows/steps/2/first", false)]
    [InlineData("/rows/steps/1/steps", false)]
    [InlineData("/rows/steps", false)]
    [InlineData("/rows/steps/x/first", false)]
    public void A_problem_belongs_to_a_field_or_to_none(string pointer, bool shown) => Assert.Equal(
        shown,
        RowPlanSteps.ShowsField(Diamond.Rows with { Steps = [new ChartRows(1, 10, 1), new Repeat(2, [new PlainRows(1, 1)])] }, pointer));

    private Task<PanelHost<RowPlanPanel>> OpenAsync(PatternDocument document, params RowStep[] steps) => PanelHost<RowPlanPanel>.OpenAsync(
        shared.Bench,
        steps.Length == 0 ? document : document with { Rows = document.Rows with { Steps = steps.ToSequence() } });
}
