using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class PanelTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private static readonly PatternDocument Diamond = Charts.Document(Charts.TenEndDiamond, repeats: 3, balance: 1);

    [Fact]
    public async Task A_change_of_a_field_is_one_step_and_its_effect_shows()
    {
        await using var panel = await PanelHost<WidthPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Repeats across", "2");
        Assert.Equal(Diamond with { Width = Diamond.Width with { Repeats = 2 } }, panel.Document);
        Assert.Contains("2 × 10 = 20, + 1 balance end = 21 ends", panel.Page.Markup, StringComparison.Ordinal);
        await panel.PressAsync("Begins at end: one more");
        Assert.Equal((1, "2"), (panel.Document.Width.Offset, panel.ValueOf("Begins at end")));
    }

    [Fact]
    public async Task A_refused_change_says_what_is_wrong_beside_its_field_and_keeps_what_was_typed()
    {
        await using var panel = await PanelHost<WidthPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Repeats across", "0");
        Assert.Equal("The motif would stand 0 times across. Let it stand there once or more.", panel.WrongAt("Repeats across"));
        Assert.Equal(("0", 3), (panel.ValueOf("Repeats across"), panel.Document.Width.Repeats));
        await panel.TypeAsync("Repeats across", "4");
        Assert.Equal(("", "4", 4), (panel.WrongAt("Repeats across"), panel.ValueOf("Repeats across"), panel.Document.Width.Repeats));
    }

    [Theory]
    [InlineData("many")]
    [InlineData("")]
    [InlineData("2.5")]
    public async Task What_is_no_number_is_said_and_changes_nothing(string typed)
    {
        await using var panel = await PanelHost<WidthPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Balance ends", typed);
        Assert.Equal($"\"{typed}\" is not a whole number. Write digits only.", panel.WrongAt("Balance ends"));
        Assert.Equal(Diamond, panel.Document);
    }

    [Fact]
    public async Task A_problem_of_several_fields_is_said_below_them()
    {
        await using var panel = await PanelHost<WidthPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Repeats across", "100");
        Assert.Equal(["The piece would have 1001 pattern ends; at most 1000 are allowed. Repeat the motif fewer times across, or take fewer balance ends."], panel.Notes);
    }

    [Fact]
    public async Task Fields_of_one_panel_do_not_undo_each_other_however_fast_they_are_typed()
    {
        await using var width = await PanelHost<WidthPanel>.OpenAsync(shared.Bench, Diamond);
        await width.TypeBothAsync(shared.Bench, ("Repeats across", "2"), ("Balance ends", "3"));
        Assert.Equal(Diamond.Width with { Repeats = 2, Balance = 3 }, width.Document.Width);
        await using var motif = await PanelHost<MotifPanel>.OpenAsync(shared.Bench, Diamond);
        await motif.TypeBothAsync(shared.Bench, ("Ends", "12"), ("Rows", "10"));
        Assert.Equal((10, 12), (motif.Document.Motif.Rows, motif.Document.Motif.Columns));
        await using var gauge = await PanelHost<GaugePanel>.OpenAsync(shared.Bench, Diamond);
        await gauge.TypeBothAsync(shared.Bench, ("Ends", "7"), ("Rows", "9"));
        Assert.Equal((7m, 9m), (gauge.Document.Gauge.Sett.Amount, gauge.Document.Gauge.Rows.Amount));
    }

    [Fact]
    public async Task Floating_selvedges_come_change_and_go()
    {
        await using var panel = await PanelHost<EdgesPanel>.OpenAsync(shared.Bench, Diamond);
        Assert.DoesNotContain("The first one met", panel.Labels, StringComparer.Ordinal);
        await panel.ChooseAsync("They go", "entering: in and out differ");
        await panel.ChooseAsync("The first one met", "over");
        Assert.Equal(new FloatingSelvedges(EdgeWay.Entering, Stroke.Over), panel.Document.Width.Floating);
        await panel.ChooseAsync("They go", "alike: both the same");
        Assert.Equal(new FloatingSelvedges(EdgeWay.Alike, Stroke.Over), panel.Document.Width.Floating);
        await panel.ChooseAsync("They go", "none");
        Assert.Null(panel.Document.Width.Floating);
    }

    [Fact]
    public async Task A_smaller_motif_says_what_it_cut()
    {
        await using var panel = await PanelHost<MotifPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.PressAsync("Rows: one less");
        Assert.Equal(9, panel.Document.Motif.Rows);
        Assert.Equal(["6 over cells were cut off."], panel.Notes);
        await panel.TypeAsync("Ends", "0");
        Assert.Equal(["The motif would have 9 rows of 0 ends. Choose 1 to 1000 rows and 1 to 1000 ends."], panel.Notes);
        await panel.ChooseAsync("Cells drawn as", "bars");
        Assert.Equal((GlyphStyle.Bars, 10), (panel.Document.Glyphs, panel.Document.Motif.Columns));
    }

    [Theory]
    [InlineData("4.5", 4.5)]
    [InlineData("4,5", 4.5)]
    [InlineData("12", 12)]
    public async Task Sett_is_taken_as_typed(string typed, double amount)
    {
        await using var panel = await PanelHost<GaugePanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Ends", typed);
        Assert.Equal((decimal)amount, panel.Document.Gauge.Sett.Amount);
        await panel.ChooseAsync("per", "10 cm");
        Assert.Equal(DensityUnit.PerTenCentimetres, panel.Document.Gauge.Sett.Unit);
    }

    [Fact]
    public async Task A_sett_that_cannot_be_is_refused_beside_its_field()
    {
        await using var panel = await PanelHost<GaugePanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Rows", "0");
        Assert.Equal("The row density is 0. Choose an amount above 0, at most 1000.", panel.WrongAt("Rows"));
        await panel.TypeAsync("Rows", "four");
        Assert.Equal("\"four\" is not a number. Write digits, with a point for decimals, such as 4.5.", panel.WrongAt("Rows"));
        Assert.Equal(Diamond, panel.Document);
    }

    [Fact]
    public async Task Words_are_taken_and_an_empty_title_is_refused()
    {
        await using var panel = await PanelHost<WordsPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Notes for the weaver", "Beat gently.\r\nMind the edge.");
        await panel.TypeAsync("Title", " ");
        Assert.Equal(("The title is empty. Write at least one letter.", " "), (panel.WrongAt("Title"), panel.ValueOf("Title")));
        Assert.Equal(Diamond with { Notes = "Beat gently.\nMind the edge." }, panel.Document);
    }

    [Fact]
    public async Task A_title_that_turns_words_around_is_refused_and_a_tab_in_the_notes_is_not()
    {
        await using var panel = await PanelHost<WordsPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Title", "Rain \u202Eetals");
        Assert.Equal(
            "Character 6 of the title is U+202E, which can't be seen and changes the direction of the words after it. Remove it: delete the words around it and type them again.",
            panel.WrongAt("Title"));
        await panel.TypeAsync("Title", "Rain\0");
        Assert.Equal("Character 5 of the title is U+0000, which cannot be shown. Remove it, or replace it by a space.", panel.WrongAt("Title"));
        await panel.TypeAsync("Notes for the weaver", "Beat\tgently.");
        Assert.Equal(Diamond with { Notes = "Beat\tgently." }, panel.Document);
    }

    [Fact]
    public async Task Nothing_changes_for_a_maker_who_signed_out()
    {
        await using var bench = await TestBench.OpenAsync();
        await using var panel = await PanelHost<WidthPanel>.OpenAsync(bench, Diamond);
        await bench.Makers.EndSessionsAsync(bench.Maker.Id);
        await panel.TypeAsync("Repeats across", "5");
        Assert.Equal(["This is not saved: you are signed out. Sign in again."], panel.Notes);
        Assert.True(panel.Editing.IsSignedOut);
        Assert.Equal(Diamond, panel.Document);
    }

    [Fact]
    public async Task A_store_that_cannot_save_is_said_and_the_field_keeps_what_was_typed()
    {
        await using var panel = await PanelHost<WordsPanel>.OpenAsync(shared.Bench, Diamond);
        shared.Bench.Time.Fail();
        await panel.TypeAsync("Title", "A long title");
        shared.Bench.Time.Go();
        Assert.Equal(["This is not saved: the server cannot store it now. Try again in a moment."], panel.Notes);
        Assert.Equal((Diamond, "A long title"), (panel.Document, panel.ValueOf("Title")));
        await panel.TypeAsync("Title", "A long title");
        Assert.Equal("A long title", panel.Document.Title);
        Assert.Empty(panel.Notes);
    }
}
