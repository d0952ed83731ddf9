using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class OtherSideTests
{
    // Common practice, no published source: the back of a right-hand twill, turned like a page, is a left-hand twill.
    [Fact]
    public void The_back_of_a_right_hand_twill_is_a_left_hand_twill()
    {
        var face = GridText.Read("xx.", ".xx", "x.x");
        Assert.Equal(GridText.Read("x..", "..x", ".x."), Transforms.OtherSide(face));
        Assert.NotEqual(GridText.Read("..x", "x..", ".x."), Transforms.OtherSide(face));
    }

    [Fact]
    public void The_back_of_the_back_is_the_face() => DocumentGen.Motifs(10, 70).Sample(
        grid => Assert.Equal(grid, Transforms.OtherSide(Transforms.OtherSide(grid))), iter: Effort.Of(500, 20_000));
}
