using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class TwillCountTests
{
    /// <summary>
    /// Twills of exact period n that differ after rotation, reversal and complement. OEIS A000046, n = 1 to 10; the terms stand in
    /// the values from outside, the definition is from memory.
    /// </summary>
    public static TheoryData<int, int> Counts => new()
    {
        { 1, 1 }, { 2, 1 }, { 3, 1 }, { 4, 2 }, { 5, 3 }, { 6, 5 }, { 7, 8 }, { 8, 14 }, { 9, 21 }, { 10, 39 },
    };

    [Theory]
    [MemberData(nameof(Counts))]
    public void There_are_as_many_twills_as_published(int ends, int count)
    {
        var seen = new HashSet<BitGrid>();
        var twills = 0;
        for (var cells = 0; cells < 1 << ends; cells++)
        {
            var bits = cells;
            var row = BitGrid.Create(1, ends, (_, end) => (bits >> end & 1) != 0);
            if (Periods.Across(row).Whole != ends || seen.Contains(row))
            {
                continue;
            }

            twills++;
            BitGrid[] likes = [row, Transforms.MirrorAcross(row), Transforms.Swap(row), Transforms.OtherSide(row)];
            foreach (var like in likes)
            {
                seen.UnionWith(Enumerable.Range(0, ends).Select(turn => Transforms.Shift(like, turn, 0)));
            }

            if (ends > 1)
            {
                Assert.True(HangsTogether.Test(BitGrid.Create(ends, ends, (r, end) => row[0, (end + ends - r) % ends])));
            }
        }

        Assert.Equal(count, twills);
    }
}
