using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class BeginPanelTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private static readonly PatternDocument Blank = Charts.Document("....../....../....../......");

    [Fact]
    public async Task A_weave_shows_as_its_parameters_change_and_takes_the_place_of_the_motif()
    {
        await using var panel = await PanelHost<BeginPanel>.OpenAsync(shared.Bench, Blank);
        await panel.ChooseAsync("Weave", "twill");
        var chart = panel.Page.Find(".begin-chart").InnerHtml;
        await panel.TypeAsync("Over/under in row 1", "3/1");
        Assert.NotEqual(chart, panel.Page.Find(".begin-chart").InnerHtml);
        await panel.ChooseAsync("Diagonals rise to the", "left");
        await panel.PressAsync("Replace the motif");
        Assert.Equal(GridText.Read("xxx.", "xx.x", "x.xx", ".xxx"), panel.Document.Motif);
        Assert.Equal([new ChartRows(1, 4, 1)], panel.Document.Rows.Steps);
        Assert.Equal("begin from a weave of 4 rows and 4 ends", panel.Editing.View.UndoName);
    }

    [Fact]
    public async Task What_makes_no_weave_is_said_beside_its_field_and_cannot_be_taken()
    {
        await using var panel = await PanelHost<BeginPanel>.OpenAsync(shared.Bench, Blank);
        await panel.ChooseAsync("Weave", "satin");
        await panel.TypeAsync("Ends", "6");
        Assert.Equal("A move of 2 makes no satin of 6 ends. No move makes a satin of 6 ends; choose another number of ends.", panel.WrongAt("Move"));
        Assert.True(panel.Page.FindAll("button").First(button => button.TextContent.Trim() == "Replace the motif").HasAttribute("disabled"));
        Assert.Empty(panel.Page.FindAll(".begin-chart"));
        await panel.TypeAsync("Ends", "8");
        await panel.TypeAsync("Move", "3");
        await panel.PressAsync("Replace the motif");
        Assert.Equal((8, 56), (panel.Document.Motif.Rows, 64 - panel.Document.Motif.Count));
    }

    [Fact]
    public async Task What_is_chosen_is_covered_and_without_it_the_panel_says_what_to_do()
    {
        await using var panel = await PanelHost<BeginPanel>.OpenAsync(shared.Bench, Blank);
        await panel.PressAsync("Cover what is chosen");
        Assert.Contains("No cells are chosen.", panel.Page.Markup, StringComparison.Ordinal);
        panel.Editing.Chosen = () => Task.FromResult<CellRectangle?>(new CellRectangle(1, 2, 2, 3));
        await panel.PressAsync("Cover what is chosen");
        Assert.Equal(GridText.Read("......", "..x.x.", "...x..", "......"), panel.Document.Motif);
        Assert.DoesNotContain("No cells are chosen.", panel.Page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_covered_is_covered_with_the_weave_that_was_shown_when_it_was_asked_for()
    {
        await using var panel = await PanelHost<BeginPanel>.OpenAsync(shared.Bench, Blank);
        var chosen = new TaskCompletionSource<CellRectangle?>();
        panel.Editing.Chosen = () => chosen.Task;
        var cover = panel.PressAsync("Cover what is chosen");
        await panel.ChooseAsync("Weave", "satin");
        await panel.TypeAsync("Ends", "6");
        Assert.Empty(panel.Page.FindAll(".begin-chart"));
        chosen.SetResult(new CellRectangle(1, 2, 2, 3));
        await cover;
        Assert.Equal(GridText.Read("......", "..x.x.", "...x..", "......"), panel.Document.Motif);
    }

    [Fact]
    public void Every_way_to_begin_makes_a_weave_and_all_are_different()
    {
        var written = new BegunText(Rows: "o3 u1 / u4", Cells: "x\t\tx", Filled: Stroke.Over, CellsOne: RowOne.Top);
        var made = Enum.GetValues<WeaveWay>().Select(way => Assert.IsType<WeaveResult.Made>(new BegunWeave(way, Second: 1) { Text = written }.Make()).Motif).ToList();
        Assert.Equal(made.Count, made.Distinct().Count());
    }
}
