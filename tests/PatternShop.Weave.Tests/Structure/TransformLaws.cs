using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class TransformLaws
{
    [Fact]
    public void Turning_back_gives_the_same() =>
        DocumentGen.Motifs(9, 9).Sample(motif =>
        {
            Assert.Equal(motif, Twice(Transforms.MirrorAcross, motif));
            Assert.Equal(motif, Twice(Transforms.MirrorAlong, motif));
            Assert.Equal(motif, Twice(Transforms.HalfTurn, motif));
            Assert.Equal(motif, Twice(Transforms.Swap, motif));
            Assert.Equal(motif, Twice(Transforms.OtherSide, motif));
            Assert.Equal(Transforms.HalfTurn(motif), Twice(Transforms.TurnFigure, motif));
            Assert.Equal(motif, Twice(grid => Twice(Transforms.TurnFigure, grid), motif));
            Assert.Equal(motif, Twice(grid => Twice(Transforms.TurnCloth, grid), motif));
            Assert.Equal(Transforms.HalfTurn(motif), Transforms.MirrorAcross(Transforms.MirrorAlong(motif)));
        });

    [Fact]
    public void Shifting_back_and_cutting_a_repeat_give_the_same() =>
        Gen.Select(DocumentGen.Motifs(9, 9), Gen.Int[-20, 20], Gen.Int[-20, 20], Gen.Int[1, 3]).Sample((motif, ends, rows, times) =>
        {
            Assert.Equal(motif, Transforms.Shift(Transforms.Shift(motif, ends, rows), -ends, -rows));
            Assert.Equal(motif, Transforms.Shift(motif, motif.Columns * times, -motif.Rows * times));
            var repeated = Transforms.RepeatTo(motif, motif.Rows * times, (motif.Columns * times) + 1);
            Assert.Equal(motif, Transforms.Cut(repeated, new CellRectangle(motif.Rows * (times - 1), 0, motif.Rows, motif.Columns)));
        });

    [Fact]
    public void A_figure_turns_clockwise_on_the_chart_and_cloth_changes_its_threads()
    {
        // one over cell at the lower left goes to the upper left; turned as cloth it is then the only under cell
        Assert.Equal(".. / .. / x.", Transforms.TurnFigure(GridText.Read("x..", "...")).ToString());
        Assert.Equal("xx / xx / .x", Transforms.TurnCloth(GridText.Read("x..", "...")).ToString());
        Assert.Equal(".x. / ...", Transforms.Shift(GridText.Read("x..", "..."), 1, 0).ToString());
        Assert.Equal("... / x..", Transforms.Shift(GridText.Read("x..", "..."), 0, 1).ToString());
    }

    [Fact]
    public void A_part_outside_is_a_fault_of_the_caller() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Transforms.Cut(GridText.Read("x.", ".x"), new CellRectangle(1, 1, 2, 1)));

    private static BitGrid Twice(Func<BitGrid, BitGrid> change, BitGrid motif) => change(change(motif));
}
