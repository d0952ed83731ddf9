using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class ChecksPanelTests(SharedBench shared) : IClassFixture<SharedBench>
{
    // Common practice, no source: from the left no turn of a straight 2/2 twill is wrapped, from the right all are.
    private static readonly PatternDocument Twill = Charts.Document("xx../.xx./..xx/x..x", repeats: 2);

    [Fact]
    public async Task Findings_are_said_with_their_weight_and_point_at_their_cells()
    {
        await using var panel = await OpenAsync(Twill);
        Assert.Equal("2 faults, 1 note.", Summary(panel));
        Assert.Equal("Fault At the right edge, the turns after rows 1 and 3 are not wrapped.", Whats(panel)[1]);
        Assert.StartsWith("Note Longest floats:", Whats(panel)[2], StringComparison.Ordinal);
        Assert.Equal(2, panel.Page.FindAll(".weight svg").Select(shape => shape.InnerHtml.Trim()).Distinct(StringComparer.Ordinal).Count());
        await panel.Page.FindAll("button.what")[1].ClickAsync();
        Assert.Equal([new Area(AreaOf.Piece, 1, 2, 7, 7), new Area(AreaOf.Piece, 3, 4, 7, 7)], panel.Pointed);
    }

    [Fact]
    public async Task A_remedy_is_one_step_that_undo_takes_back()
    {
        await using var panel = await OpenAsync(Twill);
        Assert.Contains("Every row reads otherwise.", panel.Page.FindAll(".remedy .after")[0].TextContent, StringComparison.Ordinal);
        await panel.PressAsync("Start at the right");
        Assert.Equal(Twill with { Rows = Twill.Rows with { Wefts = [new Weft(Side.Right)] } }, panel.Document);
        Assert.Equal("start at the right", panel.Editing.View.UndoName);
        Assert.Equal("No faults, no cautions, 1 note.", Summary(panel));
        Assert.Contains("Looked for threads that never interlace", panel.Page.Markup, StringComparison.Ordinal);
        await panel.Editing.UndoAsync();
        Assert.Equal("2 faults, 1 note.", Summary(panel));
    }

    [Fact]
    public async Task A_remedy_is_that_of_the_pattern_as_it_stands_now()
    {
        await using var panel = await OpenAsync(Twill);
        await panel.Editing.MakeAsync(new SetWidth(Twill.Width with { Repeats = 3 }));
        panel.Page.WaitForAssertion(() => Assert.NotEmpty(panel.Page.FindAll(".remedy")));
        await panel.PressAsync("Start at the right");
        Assert.Equal((3, Side.Right), (panel.Document.Width.Repeats, panel.Document.Rows.Wefts[0].Start));
    }

    [Fact]
    public async Task What_is_found_as_before_is_not_sent_again_and_keeps_its_remedies()
    {
        await using var panel = await OpenAsync(Twill);
        var lines = panel.Page.FindComponents<FindingLine>();
        var remedies = panel.Page.FindAll(".remedy").Count;
        var drawn = lines.Select(line => line.RenderCount).ToArray();
        await panel.Editing.MakeAsync(new SetGlyphs(GlyphStyle.Bars));
        Assert.Equal(GlyphStyle.Bars, panel.Document.Glyphs);
        Assert.Equal(remedies, panel.Page.FindAll(".remedy").Count);
        await panel.Editing.View.AdviseAsync();
        await panel.Page.InvokeAsync(() => { });
        Assert.Equal(drawn, panel.Page.FindComponents<FindingLine>().Select(line => line.RenderCount));
        await panel.PressAsync("Start at the right");
        panel.Page.WaitForAssertion(() => Assert.Equal("No faults, no cautions, 1 note.", Summary(panel)));
        Assert.NotEqual(drawn[0], panel.Page.FindComponents<FindingLine>()[0].RenderCount);
    }

    [Fact]
    public async Task A_stroke_changes_what_is_found()
    {
        await using var panel = await OpenAsync(Charts.Document("..../....", repeats: 2, floating: Charts.AlikeUnder));
        Assert.Equal(["Fault Nothing is drawn yet."], Whats(panel));
        await panel.Editing.MakeAsync(TestBench.Stroke(panel.Document.Motif, (0, 0, true), (0, 2, true), (1, 1, true), (1, 3, true)));
        Assert.DoesNotContain("Fault", panel.Page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Limits_are_set_one_by_one_and_taken_away()
    {
        await using var panel = await PanelHost<LimitsPanel>.OpenAsync(shared.Bench, Twill);
        Assert.Contains("No limit", panel.Page.Find(".consequence").TextContent, StringComparison.Ordinal);
        await panel.TypeAsync("Threads", "3");
        Assert.Equal(new Limits(3, null), panel.Document.Limits);
        await panel.TypeAsync("Length", "0,5");
        Assert.Equal(new Limits(3, new Length(0.5m, LengthUnit.Inch)), panel.Document.Limits);
        Assert.Equal("Here: 2 ends in a row, 2 rows at an end.", panel.Page.Find(".consequence").TextContent); // 4 ends and 5 rows an inch
        await panel.ChooseAsync("in", "cm");
        Assert.Equal(new Length(0.5m, LengthUnit.Centimetre), panel.Document.Limits!.Length);
        await panel.TypeAsync("Threads", "");
        await panel.TypeAsync("Length", "");
        Assert.Null(panel.Document.Limits);
    }

    [Fact]
    public async Task Limits_do_not_undo_each_other_however_fast_they_are_typed()
    {
        await using var panel = await PanelHost<LimitsPanel>.OpenAsync(shared.Bench, Twill);
        await panel.TypeBothAsync(shared.Bench, ("Threads", "3"), ("Length", "0.5"));
        Assert.Equal(new Limits(3, new Length(0.5m, LengthUnit.Inch)), panel.Document.Limits);
    }

    [Fact]
    public async Task A_limit_that_cannot_be_is_refused_beside_its_field()
    {
        await using var panel = await PanelHost<LimitsPanel>.OpenAsync(shared.Bench, Twill);
        await panel.TypeAsync("Threads", "0");
        Assert.StartsWith("The longest float would be 0 threads.", panel.WrongAt("Threads"), StringComparison.Ordinal);
        await panel.TypeAsync("Threads", "2.5");
        Assert.StartsWith("\"2.5\" is not a whole number.", panel.WrongAt("Threads"), StringComparison.Ordinal);
        Assert.Equal("2.5", panel.ValueOf("Threads"));
        Assert.Null(panel.Document.Limits);
    }

    [Fact]
    public async Task The_edges_that_serve_best_are_taken_with_one_touch()
    {
        await using var panel = await PanelHost<EdgesPanel>.OpenAsync(shared.Bench, Twill);
        Assert.Empty(panel.Page.FindAll("ol.options"));
        await panel.PressAsync("Which edges and which start serve best?");
        panel.Page.WaitForAssertion(() => Assert.Equal(4, panel.Page.FindAll("ol.options > li").Count));
        Assert.Contains("as it is now", panel.Page.FindAll("ol.options > li")[3].TextContent, StringComparison.Ordinal);
        await panel.PressAsync("Use this: No floating selvedges; start at the right");
        Assert.Equal(Twill with { Rows = Twill.Rows with { Wefts = [new Weft(Side.Right)] } }, panel.Document);
        Assert.Equal("use no floating selvedges, start at the right", panel.Editing.View.UndoName);
    }

    private async Task<PanelHost<ChecksPanel>> OpenAsync(PatternDocument document)
    {
        var panel = await PanelHost<ChecksPanel>.OpenAsync(shared.Bench, document);
        panel.Page.WaitForAssertion(() => Assert.NotEmpty(panel.Page.FindAll(".remedy")));
        return panel;
    }

    private static string Summary(PanelHost<ChecksPanel> panel) => panel.Page.Find("[role=status].summary").TextContent;

    private static List<string> Whats(PanelHost<ChecksPanel> panel) =>
        [.. panel.Page.FindAll("button.what").Select(button => string.Join(' ', button.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)))];
}
