using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class TurnsCheckTests
{
    private const string Twill = "xx../.xx./..xx/x..x";
    private const string Basket = "xx../xx../..xx/..xx";

    // Whole piece 3 of the values computed outside this project: from the left no turn of 7 is wrapped in 8 rows, from the right all are.
    [Fact]
    public void A_straight_twill_from_the_wrong_side_has_no_turn_wrapped_and_from_the_other_all()
    {
        static PatternDocument Of(Side start) => Charts.Document(Twill, repeats: 2, start: start, steps: [new Repeat(2, [new ChartRows(1, 4, 1)])]);
        var found = Found.In<TurnsNotWrapped>(Of(Side.Left));
        Assert.Equal([(Side.Left, 3, 3, true), (Side.Right, 4, 4, true)], found.Select(turns => (turns.Side, turns.Count, turns.Turns, turns.NoneHolds)));
        Assert.All(found, turns => Assert.Equal(Weight.Fault, turns.Weight));
        Assert.Equal([2, 4, 6], found[0].Rows);
        Assert.Equal(new Area(AreaOf.Piece, 1, 2, 7, 7), found[1].Areas[0]);
        Assert.Empty(Found.In<TurnsNotWrapped>(Of(Side.Right)));
    }

    [Fact]
    public void Starting_at_the_other_side_is_the_first_remedy_where_that_heals()
    {
        var twill = Charts.Document(Twill, repeats: 2);
        var remedy = Found.FirstRemedy<TurnsNotWrapped>(twill);
        Assert.Equal(MendKind.OtherSide, remedy.Edit.Kind);
        Assert.Equal(0, remedy.Aftermath.Left);
        Assert.Equal(twill with { Rows = twill.Rows with { Wefts = [new Weft(Side.Right)] } }, Found.After(twill, remedy.Edit));
    }

    // Common practice, no published source: a basket weave has unwrapped turns from either side; a floating selvedge wraps each.
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void Where_neither_start_heals_floating_selvedges_are_the_remedy(Side start)
    {
        var basket = Charts.Document(Basket, repeats: 3, start: start);
        var advice = Remedies.Of(Piece.Of(basket)).First(one => one.Finding is TurnsNotWrapped);
        var remedy = Assert.Single(advice.Remedies);
        Assert.Equal((MendKind.Edges, 0, 14), (remedy.Edit.Kind, remedy.Aftermath.Left, remedy.Aftermath.Ends));
        Assert.Empty(Found.In<TurnsNotWrapped>(Found.After(basket, remedy.Edit)));
    }

    [Fact]
    public void Going_back_through_the_same_opening_is_a_fault()
    {
        var basket = Assert.Single(Found.In<TurnsNotWrapped>(Charts.Document(Basket, repeats: 3)));
        Assert.Equal((Weight.Fault, Side.Right, 2, 2), (basket.Weight, basket.Side, basket.Count, basket.PullsOut));
    }

    [Fact]
    public void Where_some_turn_holds_the_edge_others_are_a_caution()
    {
        // at the right edge end 4 is passed over, over, under, over, over: the turn after row 1 is loose, the one after row 3 holds
        var found = Assert.Single(Found.In<TurnsNotWrapped>(Charts.Document("x..x/.xxx/xx../..xx/xx.x")));
        Assert.Equal((Weight.Caution, Side.Right, 1, 2, false), (found.Weight, found.Side, found.Count, found.Turns, found.NoneHolds));
        Assert.Equal([1], found.Rows);
    }

    [Fact]
    public void Each_weft_is_judged_by_its_own_turns()
    {
        var steps = new RowStep[] { new Repeat(2, [new ChartRows(1, 1, 1), new ChartRows(1, 1, 2), new ChartRows(2, 2, 1), new ChartRows(2, 2, 2)]) };
        var document = Charts.Document("xx../..xx", repeats: 2, steps: steps) with { };
        document = document with { Rows = document.Rows with { Wefts = [new Weft(Side.Left), new Weft(Side.Right)] } };
        Assert.Empty(Found.In<TurnsNotWrapped>(document));
        var loose = document with { Motif = GridText.Read(["xx..", ".x.."]) };
        Assert.Equal([(1, Side.Right), (2, Side.Right)], Found.In<TurnsNotWrapped>(loose).Select(turns => (turns.Weft, turns.Side)));
    }

    [Fact]
    public void Turns_are_those_of_the_definitions() => Law.OfDocuments(document => AssertTurns(document, document));

    [Fact]
    public void A_wrong_edge_would_be_seen() => Law.CanFail(document => AssertTurns(document, document with
    {
        Motif = BitGrid.Create(document.Motif.Rows, document.Motif.Columns, (row, end) => document.Motif[row, end] ^ (row % 3 == 0)),
    }));

    private static void AssertTurns(PatternDocument document, PatternDocument seen)
    {
        var rows = Oracle.Rows(seen);
        var loose = new List<(int Weft, Side Side, int Row)>();
        foreach (var row in rows)
        {
            var next = rows.FirstOrDefault(other => other.Number > row.Number && other.Weft == row.Weft);
            if (next is not null && next.From != row.From)
            {
                var end = next.From == Side.Left ? 0 : row.Over.Count - 1;
                if (row.Over[end] == next.Over[end])
                {
                    loose.Add((row.Weft, next.From, row.Number));
                }
            }
        }

        var found = BlankOf(document) ? [] : Found.In<TurnsNotWrapped>(document);
        Assert.Equal(
            BlankOf(seen) ? [] : loose.CountBy(turn => (turn.Weft, turn.Side)).Select(one => (one.Key.Weft, one.Key.Side, one.Value)).Order(),
            found.Select(turns => (turns.Weft, turns.Side, turns.Count)).Order());
        Assert.All(found, turns => Assert.Equal(
            loose.Where(turn => (turn.Weft, turn.Side) == (turns.Weft, turns.Side)).Select(turn => turn.Row).Order().Take(Finding.MostAreas),
            turns.Rows.Order()));
    }

    private static bool BlankOf(PatternDocument document) => Weave.Checks.Of(Piece.Of(document)) is [NothingDrawn];
}
