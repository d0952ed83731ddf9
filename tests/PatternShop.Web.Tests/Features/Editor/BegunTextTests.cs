using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using AngleSharp.Dom;
using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>Beginning from text that was written elsewhere.</summary>
public sealed class BegunTextTests(SharedBench shared) : IClassFixture<SharedBench>
{
    // the default bound of the hub for one message
    private const int MessageBytes = 32 * 1024;

    // a browser escapes quotation marks and what cannot be seen, and sends all else as it is
    private static readonly JsonSerializerOptions AsBrowsers = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly PatternDocument Blank = Charts.Document("....../....../....../......");

    [Fact]
    public async Task Written_rows_show_as_a_chart_and_take_the_place_of_the_motif_in_one_step()
    {
        await using var panel = await OpenAsync("from written rows");
        await panel.TypeAsync("Rows", "Over 3, under 1\nover 2, under 1, over 1");
        Assert.Single(panel.Page.FindAll(".begin-chart svg"));
        Assert.Equal("2 rows of 4 ends", panel.Page.Find(".consequence").TextContent);
        await panel.PressAsync("Replace the motif");
        Assert.Equal(GridText.Read("xxx.", "xx.x"), panel.Document.Motif);
        Assert.Equal("begin from a weave of 2 rows and 4 ends", panel.Editing.View.UndoName);
        await panel.Editing.UndoAsync();
        Assert.Equal(Blank, panel.Document);
    }

    [Theory]
    [InlineData("top", "from the right", ".xxx", "x.xx")]
    [InlineData("bottom", "from the left", "xx.x", "xxx.")]
    [InlineData("top", "in turn, row 1 from the left", "xxx.", "x.xx")]
    [InlineData("bottom", "in turn, row 1 from the right", "x.xx", "xxx.")]
    public async Task Where_row_1_is_and_where_rows_begin_is_for_the_maker_to_say(string rowOne, string from, string first, string second)
    {
        await using var panel = await OpenAsync("from written rows");
        await panel.TypeAsync("Rows", "o3 u1 / o2 u1 o1");
        await panel.ChooseAsync("Row 1 is the line at the", rowOne);
        await panel.ChooseAsync("Rows are written", from);
        await panel.PressAsync("Replace the motif");
        Assert.Equal(GridText.Read(first, second), panel.Document.Motif);
    }

    [Theory]
    [InlineData("from written rows", "Rows", "o2 u2\no2 v2", "Line 2, column 4:")]
    [InlineData("from written rows", "Rows", "o2 u2\nu4\nu1 o2", "Line 3, column 1: This row has 3 ends, the one of line 1 has 4. Make its runs add up to 4.")]
    [InlineData("from cells of a spreadsheet", "Cells", "x\t\nx\t\"y", "Line 2, column 3: A quotation mark begins this cell and none ends it.")]
    [InlineData("from cells of a spreadsheet", "Cells", "\t\t\n\t\t", "Line 1, column 1: All 6 cells are empty. Colours are not pasted")]
    public async Task What_is_wrong_is_said_by_line_and_column_beside_the_text_which_stays(string way, string label, string text, string said)
    {
        await using var panel = await OpenAsync(way);
        if (label == "Cells")
        {
            await SayAsync(panel, "over", "top");
        }

        await panel.TypeAsync(label, text);
        Assert.StartsWith(said, panel.WrongAt(label), StringComparison.Ordinal);
        var field = panel.Page.Find("textarea");
        Assert.Equal((text, "true"), (field.GetAttribute("value"), field.GetAttribute("aria-invalid")));
        Assert.Contains($"{field.Id}-problem", field.GetAttribute("aria-describedby")!.Split(' '), StringComparer.Ordinal);
        AssertNothingOffered(panel);
        Assert.Equal(Blank, panel.Document);
    }

    [Fact]
    public async Task An_empty_field_is_no_mistake_and_offers_nothing()
    {
        await using var panel = await OpenAsync("from written rows");
        Assert.Empty(panel.Page.FindAll(".wrong"));
        AssertNothingOffered(panel);
    }

    [Fact]
    public async Task What_filled_means_is_asked_and_over_and_under_make_opposite_charts()
    {
        await using var panel = await OpenAsync("from cells of a spreadsheet");
        await panel.TypeAsync("Cells", "x\t\tx\n\to\n");
        Assert.Equal("A spreadsheet does not say it. Choose over or under.", panel.WrongAt("A filled cell is"));
        Assert.Equal("A spreadsheet does not say it. Choose top or bottom.", panel.WrongAt("Row 1 is the line at the"));
        AssertNothingOffered(panel);
        Assert.Contains("Filled: 2 × “x”, 1 × “o”; empty: 3.", panel.Page.Markup, StringComparison.Ordinal);
        Assert.Contains("Line 2 was shorter than the longest", panel.Page.Markup, StringComparison.Ordinal);
        await SayAsync(panel, "over", "bottom");
        await panel.PressAsync("Replace the motif");
        Assert.Equal(GridText.Read(".x.", "x.x"), panel.Document.Motif);
        await panel.ChooseAsync("A filled cell is", "under");
        await panel.PressAsync("Replace the motif");
        Assert.Equal(GridText.Read("x.x", ".x."), panel.Document.Motif);
        await panel.ChooseAsync("Row 1 is the line at the", "top");
        await panel.PressAsync("Replace the motif");
        Assert.Equal(GridText.Read(".x.", "x.x"), panel.Document.Motif);
    }

    [Fact]
    public async Task Pasted_cells_cover_what_is_chosen_and_stay_while_another_way_is_looked_at()
    {
        await using var panel = await OpenAsync("from cells of a spreadsheet");
        await panel.TypeAsync("Cells", "x\t\n\tx");
        await SayAsync(panel, "over", "top");
        await panel.ChooseAsync("Weave", "satin");
        await panel.ChooseAsync("Weave", "from cells of a spreadsheet");
        panel.Editing.Chosen = () => Task.FromResult<CellRectangle?>(new CellRectangle(1, 2, 2, 3));
        await panel.PressAsync("Cover what is chosen");
        Assert.Equal(GridText.Read("......", "..x.x.", "...x..", "......"), panel.Document.Motif);
    }

    [Fact]
    public async Task A_text_that_was_cut_is_not_taken_for_the_whole()
    {
        await using var panel = await OpenAsync("from cells of a spreadsheet");
        await SayAsync(panel, "over", "top");
        var row = string.Join('\t', Enumerable.Repeat("x", 25)) + "\n";
        var text = string.Concat(Enumerable.Repeat(row, BegunText.Most / row.Length));
        Assert.Equal(BegunText.Most, text.Length);
        await panel.TypeAsync("Cells", text);
        Assert.Equal("100 rows of 25 ends", panel.Page.Find(".consequence").TextContent);
        Assert.Contains("Shown: rows 1 to 64, ends 1 to 25.", panel.Page.Markup, StringComparison.Ordinal);
        await panel.TypeAsync("Cells", text + "x");
        Assert.StartsWith($"The text has more than {Wording.English.Number(BegunText.Most)} characters, and only so many are taken at a time. Paste fewer cells", panel.WrongAt("Cells"), StringComparison.Ordinal);
        AssertNothingOffered(panel);
    }

    [Theory]
    [InlineData('x')]
    [InlineData('\t')]
    [InlineData('"')]
    [InlineData('×')]
    [InlineData('■')]
    public async Task The_longest_text_that_a_field_holds_fits_in_one_message(char sign)
    {
        await using var panel = await OpenAsync("from cells of a spreadsheet");
        var most = int.Parse(panel.Page.Find("textarea").GetAttribute("maxlength")!, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(BegunText.Most + 1, most);
        // the message of a change holds the text twice: as the field's and as the event's
        Assert.InRange(2 * Encoding.UTF8.GetByteCount(JsonSerializer.Serialize(new string(sign, most), AsBrowsers)), most, MessageBytes - 1024);
    }

    private static async Task SayAsync(PanelHost<BeginPanel> panel, string filled, string rowOne)
    {
        await panel.ChooseAsync("A filled cell is", filled);
        await panel.ChooseAsync("Row 1 is the line at the", rowOne);
    }

    private static void AssertNothingOffered(PanelHost<BeginPanel> panel)
    {
        Assert.Empty(panel.Page.FindAll(".begin-chart"));
        Assert.All(["Replace the motif", "Cover what is chosen"], name => Assert.True(panel.Page.FindAll("button").First(button => button.TextContent.Trim() == name).HasAttribute("disabled")));
    }

    private async Task<PanelHost<BeginPanel>> OpenAsync(string way)
    {
        var panel = await PanelHost<BeginPanel>.OpenAsync(shared.Bench, Blank);
        await panel.ChooseAsync("Weave", way);
        return panel;
    }
}
