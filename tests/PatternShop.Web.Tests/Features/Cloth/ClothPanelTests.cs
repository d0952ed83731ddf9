using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class ClothPanelTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private static readonly PatternDocument Diamond = Charts.DiamondPiece;

    [Fact]
    public async Task Thickness_and_colour_are_said_one_by_one_and_taken_back()
    {
        await using var panel = await PanelHost<ClothPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.ChooseAsync("Warp: colour", "cream");
        await panel.TypeAsync("Warp: thickness", "2,5");
        Assert.Equal(new YarnLook(new Thickness(2.5m, ThicknessUnit.Millimetres), "cream"), panel.Document.Cloth.Warp);
        await panel.ChooseAsync("in", "wraps per inch");
        Assert.Equal(new Thickness(2.5m, ThicknessUnit.WrapsPerInch), panel.Document.Cloth.Warp.Thickness);
        await panel.ChooseAsync("Weft: colour", "dark blue");
        Assert.Equal([new YarnLook(null, "dark blue")], panel.Document.Cloth.Wefts);
        await panel.TypeAsync("Warp: thickness", "");
        await panel.ChooseAsync("Warp: colour", "not said");
        await panel.ChooseAsync("Weft: colour", "not said");
        Assert.Equal(Diamond, panel.Document);
    }

    [Fact]
    public async Task Fields_of_yarns_do_not_undo_each_other_however_fast_they_are_typed()
    {
        await using var panel = await PanelHost<ClothPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeBothAsync(shared.Bench, ("Warp: thickness", "2"), ("Weft: thickness", "3"));
        await panel.TypeBothAsync(shared.Bench, ("Warp: thickness", "4"), ("Colours of rows, in order", "2 red"));
        Assert.Equal(
            ClothLook.Plain with
            {
                Warp = new YarnLook(new Thickness(4, ThicknessUnit.Millimetres), null),
                Wefts = [new YarnLook(new Thickness(3, ThicknessUnit.Millimetres), null)],
                Rows = [new ColourRun(2, "red")],
            },
            panel.Document.Cloth);
    }

    [Fact]
    public async Task Every_weft_has_its_fields()
    {
        await using var panel = await PanelHost<ClothPanel>.OpenAsync(shared.Bench, Diamond with { Rows = Diamond.Rows with { Wefts = [new Weft(Side.Left), new Weft(Side.Right)] } });
        await panel.ChooseAsync("Weft 2: colour", "rust");
        Assert.Equal([YarnLook.Plain, new YarnLook(null, "rust")], panel.Document.Cloth.Wefts);
    }

    [Fact]
    public async Task Orders_are_written_as_text_and_shown_in_their_own_form()
    {
        await using var panel = await PanelHost<ClothPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Colours of ends, in order", "6 Blue,2 white");
        Assert.Equal([new ColourRun(6, "blue"), new ColourRun(2, "white")], panel.Document.Cloth.Ends);
        Assert.Equal("6 blue, 2 white", panel.ValueOf("Colours of ends, in order"));
        await panel.TypeAsync("Colours of rows, in order", "red");
        Assert.Equal([new ColourRun(1, "red")], panel.Document.Cloth.Rows);
        Assert.Contains("A floating end has the colour of the end beside it.", panel.Page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_order_that_cannot_be_is_refused_beside_its_field_and_stays_to_be_mended()
    {
        await using var panel = await PanelHost<ClothPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Colours of ends, in order", "6 blue, 2");
        Assert.Equal("Part 2 of the order is \"2\", which is not a count and a colour. Write counts and colours with commas between, such as \"6 blue, 2 white\".", panel.WrongAt("Colours of ends, in order"));
        Assert.Equal("6 blue, 2", panel.ValueOf("Colours of ends, in order"));
        await panel.TypeAsync("Colours of ends, in order", "6 blue, 2 wite");
        Assert.StartsWith("There is no colour called \"wite\".", panel.WrongAt("Colours of ends, in order"), StringComparison.Ordinal);
        await panel.TypeAsync("Warp: thickness", "0");
        Assert.StartsWith("The thickness is 0.", panel.WrongAt("Warp: thickness"), StringComparison.Ordinal);
        Assert.Equal(Diamond, panel.Document);
        await panel.TypeAsync("Colours of ends, in order", "6 blue, 2 white");
        Assert.Equal("", panel.WrongAt("Colours of ends, in order"));
        Assert.Equal(2, panel.Document.Cloth.Ends.Count);
    }

    [Fact]
    public async Task Own_colours_are_named_used_changed_and_kept_while_they_are_used()
    {
        await using var panel = await PanelHost<ClothPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Name of another colour", "blue");
        await panel.PressAsync("Add the colour");
        Assert.Equal("\"blue\" is the name of a colour already. Give this colour another name.", panel.Page.Find("#new-colour-problem").TextContent.Trim());
        await panel.TypeAsync("Name of another colour", " Deep  sea ");
        await panel.TypeAsync("How it looks", "#3a6b7e");
        await panel.PressAsync("Add the colour");
        Assert.Equal([new OwnColour("deep sea", new Rgb(0x3A, 0x6B, 0x7E))], panel.Document.Cloth.Own);
        Assert.Empty(panel.Page.FindAll("#new-colour-problem"));
        await panel.ChooseAsync("Weft: colour", "deep sea");
        await panel.PressAsync("Take away deep sea");
        Assert.Contains("“deep sea” is in use.", panel.Page.Find("#own-colours-problem").TextContent, StringComparison.Ordinal);
        await panel.Page.Find("input[aria-label='How deep sea looks']").ChangeAsync(new() { Value = "#000102" });
        Assert.Equal(new Rgb(0, 1, 2), panel.Document.Cloth.Own[0].Value);
        await panel.ChooseAsync("Weft: colour", "not said");
        await panel.PressAsync("Take away deep sea");
        Assert.Equal(Diamond, panel.Document);
    }

    /// <summary>With strokes nothing of the panel is sent; when the hand rests, the address of the new picture and what it shows.</summary>
    [Fact]
    public async Task Strokes_wait_for_no_picture_and_the_picture_for_a_rest()
    {
        await using var panel = await PanelHost<ClothPanel>.OpenAsync(shared.Bench, Diamond);
        var (fields, shown) = (panel.Page.FindComponent<YarnFields>(), panel.Page.FindComponent<ClothPicture>());
        var (times, seen) = (fields.RenderCount, shown.RenderCount);
        Assert.Equal(Wording.English.ClothDescription(Piece.Of(Diamond), whole: true), Alt(panel));
        await panel.Editing.MakeAsync(TestBench.Stroke(panel.Document.Motif, (0, 0, false)));
        await panel.Editing.MakeAsync(TestBench.Stroke(panel.Document.Motif, (0, 1, true)));
        Assert.Equal((times, seen), (fields.RenderCount, shown.RenderCount));

        panel.Clock.Pass();
        panel.Page.WaitForState(() => panel.Clock.Count == 1);
        Assert.Equal(seen, shown.RenderCount);
        panel.Clock.Pass();
        panel.Page.WaitForAssertion(() => Assert.Equal(Wording.English.ClothDescription(Piece.Of(panel.Document), whole: true), Alt(panel)));
        Assert.EndsWith("face.svg?revision=3", panel.Page.Find(".cloth-picture img").GetAttribute("src"), StringComparison.Ordinal);
        Assert.Equal((times, seen + 1), (fields.RenderCount, shown.RenderCount));
        Assert.DoesNotContain("<svg", shown.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_hand_that_never_rests_sees_the_cloth_all_the_same()
    {
        await using var panel = await PanelHost<ClothPanel>.OpenAsync(shared.Bench, Diamond);
        var before = Alt(panel);
        for (var stroke = 0; Alt(panel) == before; stroke++)
        {
            Assert.InRange(stroke, 0, 20);
            await panel.Editing.MakeAsync(TestBench.Stroke(panel.Document.Motif, (stroke % 10, 0, !panel.Document.Motif[stroke % 10, 0])));
            panel.Page.WaitForState(() => panel.Clock.Count == 1 || Alt(panel) != before);
            panel.Clock.Pass();
        }
    }

    [Fact]
    public async Task The_back_is_one_touch_away()
    {
        await using var panel = await PanelHost<ClothPanel>.OpenAsync(shared.Bench, Diamond);
        Assert.Contains("/cloth/face.svg?", panel.Page.Find(".cloth-picture img").GetAttribute("src"), StringComparison.Ordinal);
        await panel.Page.FindAll(".picks input")[1].ChangeAsync(new() { Value = "on" });
        var picture = panel.Page.Find(".cloth-picture img");
        Assert.Contains("/cloth/back.svg?", picture.GetAttribute("src"), StringComparison.Ordinal);
        Assert.Equal(Wording.English.ClothDescription(Piece.Of(Diamond), whole: true, ClothSide.Back), picture.GetAttribute("alt"));
        Assert.Contains("turned over like a page", panel.Page.Find("figcaption").TextContent, StringComparison.Ordinal);
    }

    private static string? Alt(PanelHost<ClothPanel> panel) => panel.Page.Find(".cloth-picture img").GetAttribute("alt");
}
