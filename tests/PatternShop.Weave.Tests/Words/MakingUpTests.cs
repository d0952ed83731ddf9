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
    // 2 × 10 + 1 + 2 = 23 ends at 5 per inch: 4.6 in wide; 4 rows per inch, 22 rows.
    private static readonly Piece Diamond = Piece.Of(Charts.DiamondPiece);

    // two motifs, 2 × 10 + 3 = 23 ends = 4.6 in, are the fewest that make 4 in, of 33 ends; 4 in × 4 = 16 rows; of a piece with 11 rows all
    [Fact]
    public void The_sample_is_a_few_whole_motifs()
    {
        var wide = Charts.DiamondPiece with { Width = Charts.DiamondPiece.Width with { Repeats = 3 } };
        var low = wide with { Rows = wide.Rows with { Steps = [new ChartRows(1, 10, 1), new ChartRows(1, 1, 1)] } };
        Assert.StartsWith("Warp 23 ends (4.6 in on the loom) with the yarns of the piece and weave the first 16 rows. ", Text(Piece.Of(wide), "Sample"), StringComparison.Ordinal);
        Assert.StartsWith("Warp 23 ends (4.6 in on the loom) with the yarns of the piece and weave the first 11 rows. ", Text(Piece.Of(low), "Sample"), StringComparison.Ordinal);
    }

    // "Loom, yarn, lengths" of the outside values: over 4.6 in 0.891 at 10 %, 1.260 at 20 %; to the nearest quarter of an inch
    [Fact]
    public void The_arch_makes_up_for_the_take_up() =>
        Assert.Contains("lay it as an arch, 1 to 1.25 in high in the middle; it then has 10 to 20 % to spare", Text(Diamond, "Arch"), StringComparison.Ordinal);

    // 40 in are five arches of 8 in: √(0.375 × 64 × 0.1) = 1.549, with 0.2 2.191
    [Fact]
    public void A_wide_piece_has_several_arches() =>
        Assert.Contains("lay it in 5 arches side by side, each 1.5 to 2.25 in high in the middle", Text(Piece.Of(Charts.Document("xx../..xx", 40)), "Arch"), StringComparison.Ordinal);

    [Fact]
    public void Rows_are_measured_over_two_inches() => Assert.Contains("8 rows should measure 2 in;", Text(Diamond, "Beat"), StringComparison.Ordinal);

    // 4.6 × 1.1 = 5.06 and × 1.2 = 5.52, up to half an inch; (60 − 8) ÷ 6 = 8.7
    [Fact]
    public void A_working_length_is_enough_for_whole_rows() =>
        Assert.StartsWith("A row takes 5.5 to 6 in of weft by rule of thumb; 60 in with both tails is enough for about 8 rows. ", Text(Diamond, "Joins"), StringComparison.Ordinal);

    [Fact]
    public void Joins_overlap_by_the_ends_and_tails_by_the_rows_of_an_inch()
    {
        Assert.Contains("the same 5 ends,", Text(Diamond, "Joins"), StringComparison.Ordinal);
        Assert.Contains("through 4 rows;", Text(Diamond, "Tails"), StringComparison.Ordinal);
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
