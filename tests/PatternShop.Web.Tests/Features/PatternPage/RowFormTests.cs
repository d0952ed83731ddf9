using System.Globalization;
using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The other ways in which a page writes its rows: closed until somebody wants them, each row as the engine writes it.</summary>
public sealed class RowFormTests
{
    [Fact]
    public void Every_printed_row_stands_by_the_motif_and_in_short()
    {
        using var context = SheetTests.Context();
        var document = Charts.Document(Charts.TenEndDiamond, 3, balance: 1, floating: Charts.AlikeUnder, start: Side.Right, steps: [new ChartRows(1, 10, 1), new PlainRows(2, 1)]);
        var piece = Piece.Of(document);
        var forms = SheetTests.Render(context, document).FindAll("details.forms");
        Assert.Equal(["By the motif", "In short"], forms.Select(form => form.QuerySelector("summary")!.TextContent));
        Assert.All(forms, form => Assert.False(form.HasAttribute("open")));
        foreach (var (form, write) in forms.Zip(new Func<Reading, string>[] { reading => Wording.English.MotifText(ByMotif.Of(piece, reading)), reading => Wording.English.ShortText(reading.Writing) }))
        {
            Assert.Equal(
                piece.PrintedRows().Select(number => (number.ToString(CultureInfo.InvariantCulture), write(piece.Reading(number)))),
                form.QuerySelectorAll("li").Select(row => (row.GetAttribute("data-row")!, row.QuerySelector(".form")!.TextContent)));
        }
    }
}
