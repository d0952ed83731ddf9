using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class EdgeAdviceTests
{
    // Whole piece 3 of the values computed outside this project: without floating selvedges the twill has every turn wrapped from the right and none from the left.
    [Fact]
    public void A_straight_twill_needs_no_floating_selvedge_from_the_right_side()
    {
        var twill = Piece.Of(Charts.Document("xx../.xx./..xx/x..x", repeats: 2));
        var options = EdgeAdvice.Of(twill);
        Assert.Equal(10, options.Count);
        Assert.Equal((null, Side.Right, 0, 2), (options[0].Floating, options[0].Wefts[0].Start, options[0].NotWrapped, options[0].EdgeFloat));
        var present = options.Single(option => option.IsPresent);
        Assert.Equal((null, Side.Left, 3), (present.Floating, present.Wefts[0].Start, present.NotWrapped));
        Assert.Equal(options[^1], present);
    }

    // Common practice, no published source: a basket weave has unwrapped turns from either side.
    [Fact]
    public void A_basket_wants_floating_selvedges_from_either_side()
    {
        var options = EdgeAdvice.Of(Piece.Of(Charts.Document("xx../xx../..xx/..xx", repeats: 3)));
        Assert.All(options.Take(8), option => Assert.True(option is { Floating: not null, NotWrapped: 0 }));
        Assert.All(options.Skip(8), option => Assert.True(option is { Floating: null, NotWrapped: > 0 }));
    }

    // Rule 3 of the design: alike edges keep mirror symmetry; entering ones survive odd repeats.
    [Fact]
    public void Entering_edges_come_first_where_mirrored_rows_are_repeated_an_odd_number_of_times()
    {
        var odd = EdgeAdvice.Of(Piece.Of(Charts.Document("x.x/.x./x.x", floating: Charts.AlikeUnder, steps: [new Repeat(3, [new ChartRows(1, 3, 1)])])));
        Assert.All(odd.Where(option => option.Floating?.Edges == EdgeWay.Alike), option => Assert.Equal(1, option.Unlike));
        Assert.All(odd.Where(option => option.Floating?.Edges == EdgeWay.Entering), option => Assert.Equal((0, false), (option.Unlike, option.Mirrored)));
    }

    [Fact]
    public void Every_option_is_what_it_says_of_the_piece_that_it_makes() => Law.OfDocuments(document =>
    {
        var options = EdgeAdvice.Of(Piece.Of(document));
        Assert.Equal(10, options.Distinct().Count());
        Assert.Single(options, option => option.IsPresent);
        foreach (var option in options)
        {
            var rows = Oracle.Rows(Found.After(document, option.Edit));
            Assert.Equal(rows[0].Over.Count, option.Ends);
            Assert.Equal(rows.All(row => row.Over.SequenceEqual(row.Over.Reverse())), option.Mirrored);
            Assert.Equal(EdgeFloat(rows), option.EdgeFloat);
            Assert.Equal(NotWrapped(rows), option.NotWrapped);
        }

        var held = options.Select(option => option.NotWrapped + option.Idle).ToList();
        Assert.Equal(held.Order(), held);
    }, 300, 10_000);

    private static int NotWrapped(IReadOnlyList<OracleRow> rows) => rows.Count(row =>
        rows.FirstOrDefault(other => other.Number > row.Number && other.Weft == row.Weft) is { } next
        && next.From != row.From
        && (next.From == Side.Left ? row.Over[0] == next.Over[0] : row.Over[^1] == next.Over[^1]));

    private static int EdgeFloat(IReadOnlyList<OracleRow> rows)
    {
        var along = new[] { 0, rows[0].Over.Count - 1 }.Max(end => Longest(rows.Select(row => row.Over[end])));
        var across = rows.Max(row => Math.Max(row.Runs[0].Count, row.Runs[^1].Count));
        return Math.Max(along, across);
    }

    private static int Longest(IEnumerable<bool> cells)
    {
        var (longest, stretch, last) = (0, 0, (bool?)null);
        foreach (var cell in cells)
        {
            stretch = cell == last ? stretch + 1 : 1;
            (last, longest) = (cell, Math.Max(longest, stretch));
        }

        return longest;
    }
}
