using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>Rows in short and for the ear. Snapshots of our own wording, no outside source.</summary>
public sealed class OtherFormsTests
{
    private static readonly Wording Words = Wording.English;

    private static readonly Gen<Sequence<Run>> Rows =
        from counts in Gen.OneOf(Gen.Int[1, 3], Gen.Int[1, 1002]).Array[0, 30]
        from first in Gen.Bool
        select counts.Select((count, i) => new Run(first == (i % 2 == 0) ? Stroke.Over : Stroke.Under, count)).ToSequence();

    [Fact]
    public void Short_runs_are_read_back() => Rows.Sample(
        runs =>
        {
            Assert.Equal(runs, Words.ReadRuns(Words.ShortRuns(runs)));
            Assert.Equal(runs, Words.ReadRuns(string.Join(", ", runs.Select(Words.RunText).Select(text => text.Replace(",", "", StringComparison.Ordinal)))));
        },
        iter: Effort.Of(1_000, 50_000));

    [Theory]
    [InlineData("", "")]
    [InlineData("  ", "")]
    [InlineData("o2 u", "o2 u1")]
    [InlineData("ou2o", "o1 u2 o1")]
    [InlineData("Over 3; UNDER 1.", "o3 u1")]
    [InlineData("o1 o2 u1", "o3 u1")]
    [InlineData("o 2, u 3", "o2 u3")]
    public void Runs_are_read_as_they_are_typed(string typed, string runs) => Assert.Equal(runs, Words.ShortRuns(Words.ReadRuns(typed)!));

    [Theory]
    [InlineData("x2")]
    [InlineData("2 over")]
    [InlineData("o0")]
    [InlineData("o2 [u1]")]
    [InlineData("o1003")]
    [InlineData("o99999999999")]
    public void What_is_no_run_is_not_read(string typed) => Assert.Null(Words.ReadRuns(typed));

    [Theory]
    [InlineData("xx..", 1, "o2 u2", "over two, under two")]
    [InlineData("xx..", 3, "[o2 u2] × 3", "three times: over two, under two")]
    [InlineData("x.x.xx..", 2, "[(o1 u1) × 2 o2 u2] × 2", "twice: within it twice: over one, under one; still within it over two, under two")]
    public void A_row_in_short_and_for_the_ear(string chart, int repeats, string inShort, string spoken)
    {
        var writing = Piece.Of(Charts.Document(chart, repeats)).Reading(1).Writing;
        Assert.Equal((inShort, Capital(spoken)), (Words.ShortText(writing), Capital(Words.SpokenText(writing).Replace("then ", "", StringComparison.Ordinal))));
    }

    [Fact]
    public void The_diamond_for_the_ear()
    {
        // by hand: whole piece 1 with a third repeat and floating ends first under, so that row 6, from the right, has them over
        var piece = Piece.Of(Charts.Document(Charts.TenEndDiamond, 3, balance: 1, floating: Charts.AlikeUnder));
        Assert.Equal(
            "from the right: over one, then three times: under one, over two, under two, over one, under two, over two; after that under one, over one",
            Words.SpokenDirections(piece.Reading(6)));
    }

    [Theory]
    [InlineData(0, "zero")]
    [InlineData(21, "twenty-one")]
    [InlineData(40, "forty")]
    [InlineData(100, "one hundred")]
    [InlineData(313, "three hundred and thirteen")]
    [InlineData(1002, "one thousand and two")]
    [InlineData(20_400, "twenty thousand four hundred")]
    [InlineData(1_000_000, "1,000,000")]
    public void Numbers_are_spoken(int number, string text) => Assert.Equal(text, Words.SpokenNumber(number));

    // No sign that a screen reader might leave out, and every run and bracket is said.
    [Fact]
    public void Nothing_for_the_ear_hangs_on_a_sign() => Law.OfDocuments(document => Assert.All(
        Piece.Of(document).Readings,
        reading =>
        {
            var spoken = Words.SpokenText(reading.Writing);
            Assert.Matches("^[a-z ,;:-]+$", spoken);
            Assert.Equal(Count(reading.Writing.Items, run: true), spoken.Split(["over ", "under "], StringSplitOptions.None).Length - 1);
            Assert.Equal(Count(reading.Writing.Items, run: false), spoken.Split(": ").Length - 1);
        }));

    private static int Count(IEnumerable<WritingItem> items, bool run) =>
        items.Sum(item => item is BracketItem bracket ? Count(bracket.Items, run) + (run ? 0 : 1) : run ? 1 : 0);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
