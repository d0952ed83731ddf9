using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>The engine says of 29 published weaves what their book says of them.</summary>
public sealed class PublishedWeaveTests
{
    public static TheoryData<string> Names => [.. PublishedWeaves.All.Select(weave => weave.Name)];

    [Fact]
    public void There_are_29_of_them() => Assert.Equal(29, PublishedWeaves.All.Count);

    [Theory]
    [MemberData(nameof(Names))]
    public void Order_of_ends_and_lifts_give_the_drawn_weave(string name)
    {
        var weave = Of(name);
        Assert.Equal(Transforms.RepeatTo(weave.Drawn, weave.Lifts.Count, weave.EndOrder.Count), Woven(weave.EndOrder, weave.Lifts));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_shaft_plan_found_weaves_it_with_no_more_shafts(string name)
    {
        var weave = Of(name);
        var plan = ShaftPlan.Of(PieceOf(weave.Drawn, 1));
        Assert.True(plan.Shafts <= weave.Shafts, $"{plan.Shafts} shafts, published {weave.Shafts}");
        Assert.True(plan.TieUp.Count <= weave.Lifts.Distinct().Count());
        Assert.Equal(weave.Drawn, Woven(plan.EndOrder, plan.RowLifts.Select(lift => plan.TieUp[lift - 1]).ToSequence()));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_drawn_is_the_smallest_repeat(string name)
    {
        var weave = Of(name);
        Assert.Equal(weave.Drawn.Columns, Periods.Across(weave.Drawn).Whole);
        Assert.Equal(weave.Drawn.Rows, Periods.Along(weave.Drawn).Whole);
        var thrice = Transforms.RepeatTo(weave.Drawn, 3 * weave.Drawn.Rows, 2 * weave.Drawn.Columns);
        Assert.Equal((weave.Drawn.Columns, weave.Drawn.Rows), (Periods.Across(thrice).Whole, Periods.Along(thrice).Whole));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Longest_floats_are_those_published(string name)
    {
        var weave = Of(name);
        var floats = Floats.Longest(PieceOf(weave.Drawn, 3));
        Assert.Equal((weave.EndFloat, weave.WeftFloat), (floats.WarpOver, floats.WeftOver));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void It_hangs_together(string name) => Assert.Equal(Of(name).HangsTogether, HangsTogether.Test(Of(name).Drawn));

    [Fact]
    public void A_changed_cell_would_be_seen()
    {
        var weave = PublishedWeaves.All[0];
        var plan = ShaftPlan.Of(PieceOf(weave.Drawn.With(0, 0, !weave.Drawn[0, 0]), 1));
        Assert.NotEqual(weave.Drawn, Woven(plan.EndOrder, plan.RowLifts.Select(lift => plan.TieUp[lift - 1]).ToSequence()));
    }

    private static PublishedWeave Of(string name) => PublishedWeaves.All.Single(weave => weave.Name == name);

    private static Piece PieceOf(BitGrid motif, int times) => Piece.Of(Charts.Document(
        string.Join('/', GridText.Write(motif)),
        repeats: times,
        steps: new Repeat(times, [new ChartRows(1, motif.Rows, 1)])));

    // A shaft that is raised puts its ends on top: the weft goes under them.
    private static BitGrid Woven(Sequence<int> endOrder, Sequence<Sequence<int>> lifts) =>
        BitGrid.Create(lifts.Count, endOrder.Count, (row, end) => !lifts[row].Contains(endOrder[end]));
}
