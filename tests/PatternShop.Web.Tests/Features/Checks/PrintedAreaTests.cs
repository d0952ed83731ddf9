using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class PrintedAreaTests
{
    private static readonly Piece Repeated = Piece.Of(Charts.Document("xx../.xx./..xx/x..x", repeats: 2, steps: [new Repeat(5, [new ChartRows(1, 4, 1)]), new ChartRows(1, 1, 1)]));

    [Fact]
    public void Rows_of_later_times_are_shown_where_they_are_printed()
    {
        Assert.Equal([new MarkedBlock("piece", 2, 3, 7, 7)], Of(new Area(AreaOf.Piece, 6, 7, 7, 7)));
        Assert.Equal([new MarkedBlock("piece", 4, 4, 0, 0), new MarkedBlock("piece", 1, 1, 0, 0)], Of(new Area(AreaOf.Piece, 4, 5, 0, 0)));
        Assert.Equal([new MarkedBlock("piece", 21, 21, 0, 7)], Of(new Area(AreaOf.Piece, 21, 21, 0, 7)));
        Assert.Equal([new MarkedBlock("motif", 2, 3, 1, 1)], Of(new Area(AreaOf.Motif, 2, 3, 1, 1)));
    }

    [Fact]
    public void What_is_sent_is_bounded()
    {
        var piece = Piece.Of(Charts.Document("xxxxxx../..xxxxxx", repeats: 100, steps: [new Repeat(20_000, [new ChartRows(1, 2, 1)])]) with { Limits = new Limits(1, null) });
        foreach (var finding in Checks.Of(piece))
        {
            var blocks = PrintedAreas.Of(piece, finding.Areas);
            Assert.InRange(blocks.Count, 1, PrintedAreas.Most);
            Assert.InRange(System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(blocks).Length, 1, 8_000);
        }
    }

    private static IReadOnlyList<MarkedBlock> Of(Area area) => PrintedAreas.Of(Repeated, [area]);
}
