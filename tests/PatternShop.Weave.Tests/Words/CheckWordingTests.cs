using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class CheckWordingTests
{
    private static Wording Words => Wording.English;

    [Theory]
    [InlineData("xx../.xx./..xx/x..x", "At the left edge, the turn after row 2 is not wrapped.", "No turn at all goes round the outermost end there, so it can slip out.")]
    [InlineData("xx.x/..../.xxx/x..x", "Row 2 of the motif never interlaces.", "It passes every end on the same side, so it lies loose on the cloth.")]
    [InlineData("xx.x/x.../x.x.", "End 1 of the motif never interlaces.", "Every row passes it on the same side, so it lies loose on the cloth.")]
    [InlineData(
        ".xxx/...x/xx.x/.x..",
        "The cloth comes apart: rows 1 and 3 with ends 1 and 3 lift off.",
        "They lie over all other threads that they cross. Judged on the motif repeated without end, without floating selvedges and turns, which would only sew the layers together at the edge.")]
    [InlineData("..../....", "Nothing is drawn yet.", "Every row goes under every end, so there is no cloth.")]
    public void A_finding_names_its_threads_and_says_why(string chart, string what, string why)
    {
        var piece = Piece.Of(Charts.Document(chart));
        var finding = Weave.Checks.Of(piece)[0];
        Assert.Equal((what, why), (Words.FindingWhat(piece, finding), Words.FindingWhy(piece, finding)));
    }

    [Fact]
    public void Long_floats_are_said_in_threads_and_length_with_the_limit_and_the_first_place()
    {
        var piece = Piece.Of(Charts.Document("xxxxx.x./.x.x.x.x", repeats: 3, floating: Charts.AlikeUnder) with { Limits = new Limits(3, new Length(0.8m, LengthUnit.Inch)) });
        var floats = Assert.Single(Weave.Checks.Of(piece).OfType<FloatsTooLong>());
        Assert.Equal("3 floats of the weft on the face are too long: the longest passes 5 ends, 1.25 in (3.2 cm).", Words.FindingWhat(piece, floats));
        Assert.Equal("You allow 3 threads and 0.8 in: 3 ends here. First in row 1 at ends 1–5.", Words.FindingWhy(piece, floats));
    }

    [Fact]
    public void Many_threads_are_counted_after_the_first()
    {
        var piece = Piece.Of(Charts.Document("x.", repeats: 2, steps: [new Repeat(30, [new ChartRows(1, 1, 1)])]));
        var turns = Weave.Checks.Of(piece).OfType<TurnsNotWrapped>().First();
        Assert.Equal("At the left edge, the turns after rows 2, 4, 6, 8, 10, 12 and 8 more are not wrapped.", Words.FindingWhat(piece, turns));
    }

    [Fact]
    public void A_summary_counts_each_weight()
    {
        Assert.Equal("No faults, no cautions.", Words.ChecksSummary([]));
        var twill = Weave.Checks.Of(Piece.Of(Charts.Document("xx../.xx./..xx/x..x", repeats: 2)));
        Assert.Equal("2 faults, 1 note.", Words.ChecksSummary(twill));
        Assert.Equal("1 fault.", Words.ChecksSummary([twill[0]]));
    }

    [Fact]
    public void A_remedy_says_what_it_changes_and_what_it_brings()
    {
        var broken = Charts.Document(Charts.TenEndDiamond, repeats: 2, balance: 1, floating: Charts.AlikeOver, steps: [new Repeat(2, [new ChartRows(2, 7, 1)]), new ChartRows(8, 10, 1)]);
        var piece = Piece.Of(broken);
        var advice = Remedies.Of(piece).First(one => one.Finding is SeamBreaks);
        Assert.Equal(
            [
                ("Weave the whole motif", "20 rows instead of 15."),
                ("Weave the last row once, at the end", "14 rows instead of 15. But it brings a caution, repeated rows that read otherwise every other time."),
            ],
            advice.Remedies.Select(remedy => (Words.RemedyName(remedy), Words.AftermathText(piece, advice.Finding, remedy))));
        Assert.Equal("weave the whole motif", Words.EditName(advice.Remedies[0].Edit));
    }

    [Fact]
    public void Ways_of_edges_say_what_speaks_for_them()
    {
        var options = EdgeAdvice.Of(Piece.Of(Charts.Document("xx../.xx./..xx/x..x", repeats: 2)));
        Assert.Equal(
            ("No floating selvedges; start at the right", "Every turn wrapped; longest float at the edge 2; 8 ends."),
            (Words.EdgeOptionName(options[0]), Words.EdgeOptionWhy(options[0])));
        Assert.Equal("3 of 3 turns not wrapped; longest float at the edge 2; 8 ends.", Words.EdgeOptionWhy(options[^1]));
        Assert.Equal("use no floating selvedges, start at the right", Words.EditName(options[0].Edit));
    }
}
