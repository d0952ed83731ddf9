using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class PeriodTests
{
    /// <summary>By the border function of D. E. Knuth, J. H. Morris and V. R. Pratt 1977.</summary>
    [Theory]
    [InlineData("abcab", 3, 5)]
    [InlineData("ababa", 2, 5)]
    [InlineData("abaab", 3, 5)]
    [InlineData("abacabadabacaba", 8, 15)]
    [InlineData("abcabc", 3, 3)]
    [InlineData("a", 1, 1)]
    public void Smallest_periods_of_words_are_those_known(string word, int partial, int whole) =>
        Assert.Equal(new Period(partial, whole), Periods.Of(word.Select(c => (int)c).ToArray()));

    [Fact]
    public void Nothing_has_no_period() => Assert.Throws<ArgumentException>(() => Periods.Of([]));

    [Fact]
    public void Periods_are_those_found_by_trying() =>
        DocumentGen.Motifs(6, 9).Select(Gen.Int[1, 3], Gen.Int[0, 2]).Sample(
            (motif, times, more) =>
            {
                var chart = Transforms.RepeatTo(motif, (motif.Rows * times) + more, (motif.Columns * times) + more);
                Assert.Equal(ByTrying(chart.Columns, (a, b) => Enumerable.Range(0, chart.Rows).All(row => chart[row, a] == chart[row, b])), Periods.Across(chart));
                Assert.Equal(ByTrying(chart.Rows, (a, b) => Enumerable.Range(0, chart.Columns).All(end => chart[a, end] == chart[b, end])), Periods.Along(chart));
            },
            iter: Effort.Of(3_000, 100_000));

    [Fact]
    public void A_wrong_period_would_be_seen() =>
        Assert.NotEqual(ByTrying(5, (a, b) => "abcab"[a] == "abcab"[b]), Periods.Of("ababa".Select(c => (int)c).ToArray()));

    private static Period ByTrying(int length, Func<int, int, bool> alike)
    {
        bool Repeats(int period) => Enumerable.Range(0, length - period).All(i => alike(i, i + period));
        return new Period(
            Enumerable.Range(1, length).First(Repeats),
            Enumerable.Range(1, length).First(period => length % period == 0 && Repeats(period)));
    }
}
