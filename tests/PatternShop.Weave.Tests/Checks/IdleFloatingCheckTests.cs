using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class IdleFloatingCheckTests
{
    // An edge stitch across with the working weft after each row: every row starts at the left, so entering edges never change.
    private static PatternDocument Stitched(FloatingSelvedges floating) => Charts.Document(
        "xx../..xx",
        repeats: 2,
        floating: floating,
        steps: [new Repeat(3, [new ChartRows(1, 1, 1), new EdgeStitch("twining", StitchYarn.Working, 1, Side.Left, 1), new ChartRows(2, 2, 1), new EdgeStitch("twining", StitchYarn.Working, 1, Side.Left, 1)])]);

    [Fact]
    public void Floating_selvedges_that_are_never_caught_are_named()
    {
        var found = Found.In<FloatingIdle>(Stitched(Charts.EnteringOver));
        Assert.Equal([(Side.Left, Stroke.Over, Weight.Fault), (Side.Right, Stroke.Under, Weight.Fault)], found.Select(idle => (idle.Side, idle.Stroke, idle.Weight)));
        Assert.Equal(new Area(AreaOf.Piece, 1, 6, 9, 9), found[1].Areas[0]);
        Assert.Empty(Found.In<FloatingIdle>(Stitched(Charts.AlikeUnder)));
    }

    [Fact]
    public void Letting_them_go_alike_mends_it()
    {
        var remedy = Found.FirstRemedy<FloatingIdle>(Stitched(Charts.EnteringOver));
        Assert.Equal(EdgeWay.Alike, ((SetFloating)remedy.Edit.Edit).Floating!.Edges);
    }

    [Fact]
    public void Idle_floating_ends_are_those_of_the_definitions() => Law.OfDocuments(document =>
    {
        var rows = Oracle.Rows(document);
        var expected = new[] { Side.Left, Side.Right }.Where(side =>
            document.Width.Floating is not null && rows.Select(row => side == Side.Left ? row.Over[0] : row.Over[^1]).Distinct().Count() == 1);
        if (Weave.Checks.Of(Piece.Of(document)) is not [NothingDrawn])
        {
            Assert.Equal(expected, Found.In<FloatingIdle>(document).Select(idle => idle.Side));
        }
    });
}
