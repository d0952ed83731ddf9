using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>
/// The numbers of the advice on making up, worked out by hand. The advice itself (sample a hand's breadth, arch, overlap of an inch, tails of a
/// hand's breadth) is common practice, no source; the arch is the flat-arc approximation √(3/8 × width × extra).
/// </summary>
public sealed class MakingUpTests
{
    // 3 × 8 + 1 + 2 = 27 ends at 4 per inch: 6.75 in wide; 5 rows per inch, 18 rows.
    private static readonly Piece Diamond = Piece.Of(Charts.Document(
        Charts.Diamond, 3, 0, 1, Charts.AlikeUnder, Side.Right, new Repeat(2, [new ChartRows(1, 8, 1)]), new ChartRows(1, 1, 1), new PlainRows(1, 1)));

    // two motifs, 2 × 8 + 3 = 19 ends = 4.75 in, are the fewest that make 4 in; 4 in × 5 = 20 rows, of which the piece has 18
    [Fact]
    public void The_sample_is_a_few_whole_motifs() =>
        Assert.StartsWith("Warp 19 ends (4.75 in on the loom) with the yarns of the piece and weave the first 18 rows. ", Text(Diamond, "Sample"), StringComparison.Ordinal);

    // √(0.375 × 6.75² × 0.1) = 1.307, with 0.2 1.849; to the nearest quarter of an inch
    [Fact]
    public void The_arch_makes_up_for_the_take_up() =>
        Assert.Contains("lay it as an arch, 1.25 to 1.75 in high in the middle; it then has 10 to 20 % to spare", Text(Diamond, "Arch"), StringComparison.Ordinal);

    // 40 in are five arches of 8 in: √(0.375 × 64 × 0.1) = 1.549, with 0.2 2.191
    [Fact]
    public void A_wide_piece_has_several_arches() =>
        Assert.Contains("lay it in 5 arches side by side, each 1.5 to 2.25 in high in the middle", Text(Piece.Of(Charts.Document("xx../..xx", 40)), "Arch"), StringComparison.Ordinal);

    [Fact]
    public void Rows_are_measured_over_two_inches() => Assert.Contains("10 rows should measure 2 in;", Text(Diamond, "Beat"), StringComparison.Ordinal);

    // 6.75 × 1.1 = 7.425 and × 1.2 = 8.1, up to half an inch; (60 − 8) ÷ 8.5 = 6.1
    [Fact]
    public void A_working_length_is_enough_for_whole_rows() =>
        Assert.StartsWith("A row takes 7.5 to 8.5 in of weft by rule of thumb; 60 in with both tails is enough for about 6 rows. ", Text(Diamond, "Joins"), StringComparison.Ordinal);

    [Fact]
    public void Joins_overlap_by_the_ends_and_tails_by_the_rows_of_an_inch()
    {
        Assert.Contains("the same 4 ends,", Text(Diamond, "Joins"), StringComparison.Ordinal);
        Assert.Contains("through 5 rows;", Text(Diamond, "Tails"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_piece_that_is_small_is_its_own_sample() =>
        Assert.StartsWith("This piece is small: weave it once as its own sample (2 ends, 0.5 in on the loom). ", Text(Piece.Of(Charts.Document("x./.x")), "Sample"), StringComparison.Ordinal);

    // 10 ends per 10 cm: 1 cm an end; 100 ends are 100 cm: × 1.1 = 110, × 1.2 = 120; (150 − 20) ÷ 120 = 1
    [Fact]
    public void Whoever_measures_in_centimetres_is_answered_in_centimetres()
    {
        var ten = new Density(10, DensityUnit.PerTenCentimetres);
        var piece = Piece.Of(Charts.Document("x./.x", 50) with { Gauge = new Gauge(ten, ten) });
        Assert.StartsWith("A row takes 110 to 120 cm of weft by rule of thumb; 150 cm with both tails is enough for about 1 row. ", Text(piece, "Joins"), StringComparison.Ordinal);
        Assert.StartsWith("Warp 10 ends (10 cm on the loom)", Text(piece, "Sample"), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_piece_gets_advice_in_whole_sentences() => DocumentGen.Documents.Sample(
        document => Assert.All(Wording.English.MakingUp(Piece.Of(document)), part =>
        {
            Assert.EndsWith(".", part.Text, StringComparison.Ordinal);
            Assert.DoesNotMatch(@"\b0 (end|row|arch)", part.Text);
            Assert.DoesNotContain("-", part.Text, StringComparison.Ordinal);
        }),
        iter: Effort.Of(200, 5_000));

    private static string Text(Piece piece, string name) => Wording.English.MakingUp(piece).Single(part => part.Name == name).Text;
}
