using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class SequenceTests
{
    [Fact]
    public void Sequences_are_equal_exactly_when_their_items_are() =>
        Gen.Select(Gen.Int[0, 2].Array[0, 4], Gen.Int[0, 2].Array[0, 4]).Sample(
            (a, b) =>
            {
                var (left, right) = (a.ToSequence(), Sequence.Of<int>(b));
                Assert.Equal(a.SequenceEqual(b), left.Equals(right));
                Assert.Equal(a.SequenceEqual(b), right.Equals((object)left));
                Assert.True(!left.Equals(right) || left.GetHashCode() == right.GetHashCode());
            },
            iter: Effort.Of(2_000, 50_000));

    [Fact]
    public void A_record_that_holds_one_is_equal_by_value()
    {
        static RowPlan Plan(int times) => new([new Weft(Side.Left)], Stroke.Under, [new Repeat(times, [new ChartRows(1, 8, 1), new PlainRows(2, 1)])]);
        Assert.Equal(Plan(3), Plan(3));
        Assert.Equal(Plan(3).GetHashCode(), Plan(3).GetHashCode());
        Assert.NotEqual(Plan(3), Plan(4));
    }

    [Fact]
    public void Documents_made_twice_are_equal() => DocumentGen.Documents.Sample(
        document =>
        {
            var again = document with
            {
                Motif = GridText.Read(GridText.Write(document.Motif)),
                Rows = document.Rows with { Wefts = document.Rows.Wefts.ToList().ToSequence(), Steps = document.Rows.Steps.ToList().ToSequence() },
            };
            Assert.Equal(document, again);
            Assert.Equal(document.GetHashCode(), again.GetHashCode());
            Assert.NotEqual(document, again with { Motif = again.Motif.With(0, 0, !again.Motif[0, 0]) });
        },
        iter: Effort.Of(300, 10_000));

    [Fact]
    public void Changing_the_list_it_was_made_from_changes_nothing()
    {
        int[] items = [1, 2, 3];
        var (copied, listed) = (Sequence.Of<int>(items), items.ToSequence());
        items[0] = 9;
        Assert.Equal([1, 2, 3], copied);
        Assert.Equal([1, 2, 3], listed);
    }
}
