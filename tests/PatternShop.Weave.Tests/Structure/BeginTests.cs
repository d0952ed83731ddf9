using CsCheck;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class BeginTests
{
    /// <summary>A. Wolfensberger, Theory of Silk Weaving, 2nd ed. 1921, p. 33 (and n minus each); none for 6.</summary>
    public static TheoryData<int, int[]> SatinMoves => new()
    {
        { 5, [2] }, { 6, [] }, { 7, [2, 3] }, { 8, [3] }, { 9, [2, 4] }, { 10, [3] }, { 11, [2, 3, 4, 5] }, { 12, [5] },
        { 13, [2, 3, 4, 5, 6] }, { 14, [3, 5] }, { 15, [2, 4, 7] }, { 16, [3, 5, 7] },
    };

    [Theory]
    [MemberData(nameof(SatinMoves))]
    public void Satins_have_the_published_moves(int ends, int[] moves) =>
        Assert.Equal(moves.Concat(moves.Select(move => ends - move)).Distinct().Order(), Satins.Moves(ends));

    [Fact]
    public void A_move_that_makes_no_satin_is_refused_with_those_that_do()
    {
        var refused = Assert.IsType<WeaveResult.Refused>(Satins.Regular(8, 2, SatinFace.Warp));
        Assert.Equal(("/move", "Choose one of 3, 5."), (refused.Problems[0].Pointer, refused.Problems[0].Remedy));
        Assert.IsType<WeaveResult.Refused>(Satins.Regular(6, 2, SatinFace.Weft));
        Assert.IsType<WeaveResult.Refused>(Satins.Regular(4, 1, SatinFace.Weft));
    }

    [Fact]
    public void A_satin_binds_every_end_and_row_once_and_hangs_together() =>
        Gen.Int[5, 24].SelectMany(ends => Gen.Select(Gen.Const(ends), Gen.Int[0, Math.Max(0, Satins.Moves(ends).Count - 1)], Gen.Enum<SatinFace>()))
            .Where((ends, _, _) => Satins.Moves(ends).Count > 0)
            .Sample((ends, at, face) =>
            {
                var satin = Made(Satins.Regular(ends, Satins.Moves(ends)[at], face));
                var once = face == SatinFace.Warp ? satin : Transforms.Swap(satin);
                Assert.All(Enumerable.Range(0, ends), i => Assert.Equal(1, Enumerable.Range(0, ends).Count(j => once[i, j])));
                Assert.All(Enumerable.Range(0, ends), i => Assert.Equal(1, Enumerable.Range(0, ends).Count(j => once[j, i])));
                Assert.True(HangsTogether.Test(satin));
            });

    [Fact]
    public void A_right_hand_twill_rises_to_the_right_from_row_1() =>
        Assert.Equal("xx.. / .xx. / ..xx / x..x", Made(Twills.Regular("2/2")).ToString());

    [Fact]
    public void Its_other_side_is_left_handed()
    {
        // common practice, no source: the back of xx. / .xx / x.x, turned like a page
        Assert.Equal("x.. / ..x / .x.", Transforms.OtherSide(Made(Twills.Regular("2/1"))).ToString());
        Assert.Equal("xx. / x.x / .xx", Made(Twills.Regular("2/1", rises: Side.Left)).ToString());
    }

    [Fact]
    public void Every_regular_twill_hangs_together() =>
        Gen.Int[1, 5].Array[2, 4].Where(counts => counts.Length % 2 == 0).Select(Gen.Int[1, 3], Gen.Enum<Side>()).Sample((counts, step, side) =>
        {
            var result = Twills.Regular(string.Join('/', counts), step, side);
            if (result is WeaveResult.Made { Motif: var twill } && twill.Rows == twill.Columns)
            {
                Assert.True(HangsTogether.Test(twill));
            }
        });

    [Theory]
    [InlineData("")]
    [InlineData("2")]
    [InlineData("2/")]
    [InlineData("2/0")]
    [InlineData("2/-1")]
    [InlineData("a/b")]
    [InlineData("2/2/2")]
    public void What_is_no_twill_is_refused(string numbers) =>
        Assert.Equal("/numbers", Assert.IsType<WeaveResult.Refused>(Twills.Regular(numbers)).Problems[0].Pointer);

    [Fact]
    public void The_diamond_of_whole_pieces_is_a_twill_there_and_back()
    {
        // "Whole pieces" 1: a six-shaft twill on ends 1 2 3 4 5 6 5 4 3 2 in the same order of rows
        Assert.Equal([1, 2, 3, 4, 5, 6, 5, 4, 3, 2], Twills.ThereAndBack(6, PointWay.Shared));
        Assert.Equal(
            "x.xx...xx. / .x.xx.xx.x / ..x.xxx.x. / x..x.x.x.. / xx..x.x..x / .xx..x..xx / xx..x.x..x / x..x.x.x.. / ..x.xxx.x. / .x.xx.xx.x",
            Twills.Diamond(Made(Twills.Regular("1/1/2/2")), PointWay.Shared).ToString());
    }

    [Fact]
    public void A_diamond_that_goes_on_first_takes_the_first_thread_again_before_it_turns()
    {
        // by hand: ends 1 2 3 1 3 2 of x.. / .x. / ..x in the same order of rows
        Assert.Equal([1, 2, 3, 1, 3, 2], Twills.ThereAndBack(3, PointWay.Continued));
        Assert.Equal(
            "x..x.. / .x...x / ..x.x. / x..x.. / ..x.x. / .x...x",
            Twills.Diamond(Made(Twills.Regular("1/2")), PointWay.Continued).ToString());
    }

    [Fact]
    public void A_point_on_one_shared_end_repeats_on_two_less_than_twice_the_ends()
    {
        // A. Wolfensberger, p. 11: a point draw of n shafts repeats on 2n - 2 ends
        Assert.Equal([1, 2, 3, 4, 3, 2], Twills.ThereAndBack(4, PointWay.Shared));
        Assert.Equal(6, Twills.Point(Made(Twills.Regular("2/2"))).Columns);
    }

    [Fact]
    public void Herringbone_breaks_where_ends_are_opposite()
    {
        var herringbone = Twills.Herringbone(Made(Twills.Regular("2/2")));
        // by hand: ends 1 2 3 4 2 1 4 3 of xx.. / .xx. / ..xx / x..x, for end 2 is the opposite of end 4
        Assert.Equal("xx..xx.. / .xx.x..x / ..xx..xx / x..x.xx.", herringbone.ToString());
        Assert.All(Enumerable.Range(0, 4), row => Assert.NotEqual(herringbone[row, 3], herringbone[row, 4]));
        Assert.All(Enumerable.Range(0, 4), row => Assert.NotEqual(herringbone[row, 7], herringbone[row, 0]));
    }

    [Fact]
    public void A_broken_twill_takes_the_last_rows_backwards() =>
        Assert.Equal("xx.. / .xx. / x..x / ..xx", Twills.Broken(Made(Twills.Regular("2/2"))).ToString());

    [Fact]
    public void Basket_and_rib_double_the_threads_of_plain_weave()
    {
        Assert.Equal("xx.. / xx.. / ..xx / ..xx", Made(Basics.Basket(2, 2)).ToString());
        Assert.Equal("xx. / xx. / ..x", Made(Basics.Basket(2, 1)).ToString());
        Assert.Equal("xxx. / ...x", Made(Basics.Rib(3, 1, Floating.Wefts)).ToString());
        Assert.Equal("x. / x. / .x", Made(Basics.Rib(2, 1, Floating.Ends)).ToString());
        Assert.Equal("/b", Assert.IsType<WeaveResult.Refused>(Basics.Basket(2, 0)).Problems[0].Pointer);
    }

    private static BitGrid Made(WeaveResult result) => Assert.IsType<WeaveResult.Made>(result).Motif;
}
