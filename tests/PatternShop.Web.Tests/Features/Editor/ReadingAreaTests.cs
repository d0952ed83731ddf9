using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class ReadingAreaTests(SharedBench shared) : IClassFixture<SharedBench>
{
    [Fact]
    public async Task Every_printed_row_reads_as_the_directions_do_and_follows_the_chart()
    {
        var steps = new RowStep[] { new Repeat(3, [new ChartRows(1, 10, 1)]), new ChartRows(1, 1, 1), new PlainRows(1, 1) };
        await using var area = await PanelHost<ReadingArea>.OpenAsync(shared.Bench, Charts.Document(Charts.TenEndDiamond, repeats: 3, balance: 1, floating: Charts.AlikeUnder, start: Side.Right, steps: steps));
        AssertRows(area);
        await area.Editing.MakeAsync(TestBench.Stroke(area.Document.Motif, (0, 0, false), (3, 5, true)));
        AssertRows(area);
        Assert.Contains(Wording.English.WarpArithmetic(Piece.Of(area.Document)), area.Page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_long_piece_is_shown_a_part_at_a_time()
    {
        await using var area = await PanelHost<ReadingArea>.OpenAsync(shared.Bench, Charts.Document("x./.x", steps: [new PlainRows(450, 1)]));
        Assert.Equal(200, area.Page.FindAll("tbody tr").Count);
        await area.PressAsync("Show 200 rows more of 450");
        await area.PressAsync("Show 50 rows more of 450");
        Assert.Equal(450, area.Page.FindAll("tbody tr").Count);
        Assert.Empty(area.Page.FindAll("button"));
    }

    [Theory]
    [InlineData("Motif")]
    [InlineData("Short")]
    public async Task Rows_are_written_in_the_form_that_is_chosen(string form)
    {
        await using var area = await PanelHost<ReadingArea>.OpenAsync(shared.Bench, Charts.Document(Charts.TenEndDiamond, repeats: 3, balance: 1, floating: Charts.AlikeUnder));
        await area.Page.Find("#written-form").ChangeAsync(new Microsoft.AspNetCore.Components.ChangeEventArgs { Value = form });
        var piece = Piece.Of(area.Document);
        Assert.Equal(
            piece.PrintedRows().Select(piece.Reading).Select(reading => form == "Motif" ? Wording.English.MotifText(ByMotif.Of(piece, reading)) : Wording.English.ShortText(reading.Writing)),
            area.Page.FindAll("tbody td.runs").Select(cell => cell.TextContent));
        await area.Page.Find("#written-form").ChangeAsync(new Microsoft.AspNetCore.Components.ChangeEventArgs { Value = "Words" });
        AssertRows(area);
    }

    private static void AssertRows(PanelHost<ReadingArea> area)
    {
        Assert.False(area.Editing.View.Piece.KeepsReadings);
        var piece = Piece.Of(area.Document);
        var expected = piece.PrintedRows().Select(number => Wording.English.WritingText(piece.Reading(number).Writing));
        Assert.Equal(expected, area.Page.FindAll("tbody td.runs").Select(DirectionsTable.Written));
        var spoken = piece.PrintedRows().Select(number => piece.Reading(number).Writing).Where(writing => writing.Depth > 0).Select(Wording.English.SpokenText).ToList();
        Assert.NotEmpty(spoken);
        Assert.Equal(spoken, area.Page.FindAll("tbody td.runs > span[aria-hidden] + span").Select(cell => cell.TextContent));
    }
}
