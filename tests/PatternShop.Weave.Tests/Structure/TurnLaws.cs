using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class TurnLaws
{
    [Fact]
    public void Turns_are_where_a_weft_enters_at_the_side_it_left() => Law.OfDocuments(document => AssertTurns(document, document));

    [Fact]
    public void A_wrong_start_side_or_edge_would_be_seen()
    {
        Law.CanFail(document => AssertTurns(document, document with
        {
            Rows = document.Rows with { Wefts = document.Rows.Wefts.Select(weft => new Weft(weft.Start == Side.Left ? Side.Right : Side.Left)).ToSequence() },
        }));
        Law.CanFail(document => AssertTurns(document, document with { Width = document.Width with { Floating = null } }));
    }

    // Common practice, no published source: a floating selvedge goes under on one row and over on the next, so that each turn wraps it.
    [Fact]
    public void Floating_selvedges_wrap_every_turn_that_no_stitch_holds() => Law.OfDocuments(document =>
    {
        if (document.Width.Floating is not null)
        {
            Assert.All(Turns.Of(Piece.Of(document)), turn => Assert.True(turn.Wrapped));
        }
    });

    // Common practice, no published source: a basket weave has unwrapped turns from either side.
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void Basket_weave_without_floating_selvedge_has_unwrapped_turns_from_either_side(Side start)
    {
        var piece = Piece.Of(Charts.Document("xx../xx../..xx/..xx", repeats: 3, start: start));
        Assert.Contains(Turns.Of(piece), turn => !turn.Wrapped);
        Assert.Contains(Turns.Of(piece), turn => turn.Wrapped);
    }

    // Common practice, no published source: a straight 2/2 twill of an even number of rows has all its turns wrapped from one side and none from the other.
    [Theory]
    [InlineData("xx../.xx./..xx/x..x")]
    [InlineData("xx../x..x/..xx/.xx.")]
    public void Straight_twill_is_wrapped_from_one_side_only(string chart)
    {
        var wrapped = new[] { Side.Left, Side.Right }
            .Select(start => Turns.Of(Piece.Of(Charts.Document(chart, repeats: 4, start: start))).Count(turn => turn.Wrapped))
            .Order();
        Assert.Equal([0, 3], wrapped);
    }

    [Fact]
    public void A_stitch_that_takes_the_weft_across_leaves_no_turn_there()
    {
        static PatternDocument With(int across) => Charts.Document(
            "xx../..xx",
            steps: [new ChartRows(1, 1, 1), new EdgeStitch("twining", StitchYarn.Working, across, Side.Left, 1), new ChartRows(2, 2, 1)]);
        Assert.Empty(Turns.Of(Piece.Of(With(1))));
        Assert.Equal([new Turn(1, 1, 2, Side.Right, true)], Turns.Of(Piece.Of(With(2))));
    }

    private static void AssertTurns(PatternDocument document, PatternDocument seen)
    {
        var rows = Oracle.Rows(seen);
        var expected = new List<Turn>();
        foreach (var row in rows)
        {
            var next = rows.FirstOrDefault(other => other.Number > row.Number && other.Weft == row.Weft);
            if (next is not null && next.From != row.From)
            {
                var end = next.From == Side.Left ? 0 : row.Over.Count - 1;
                expected.Add(new Turn(row.Weft, row.Number, next.Number, next.From, row.Over[end] != next.Over[end]));
            }
        }

        Assert.Equal(expected, Turns.Of(Piece.Of(document)).OrderBy(turn => turn.Row));
    }
}
