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
    public void Every_transform_moves_each_cell_where_it_says() =>
        Gen.Select(DocumentGen.Motifs(8, 8), Gen.Int[-20, 20], Gen.Int[-20, 20]).Sample((motif, ends, rows) =>
        {
            var (m, n) = (motif.Rows, motif.Columns);
            void Moves(BitGrid changed, Func<int, int, (int Row, int End)> to, bool swapped = false) => Assert.All(
                Enumerable.Range(0, m * n),
                cell =>
                {
                    var (row, end) = to(cell / n, cell % n);
                    Assert.Equal(motif[cell / n, cell % n] != swapped, changed[row, end]);
                });
            Moves(Transforms.MirrorAcross(motif), (row, end) => (row, n - 1 - end));
            Moves(Transforms.MirrorAlong(motif), (row, end) => (m - 1 - row, end));
            Moves(Transforms.HalfTurn(motif), (row, end) => (m - 1 - row, n - 1 - end));
            Moves(Transforms.Swap(motif), (row, end) => (row, end), swapped: true);
            Moves(Transforms.OtherSide(motif), (row, end) => (row, n - 1 - end), swapped: true);

            // clockwise with row 1 at the bottom: the left end becomes the top row, what was low comes to lie left
            Moves(Transforms.TurnFigure(motif), (row, end) => (n - 1 - end, row));
            Moves(Transforms.TurnCloth(motif), (row, end) => (n - 1 - end, row), swapped: true);
            Moves(Transforms.Shift(motif, ends, rows), (row, end) => ((row + rows + (20 * m)) % m, (end + ends + (20 * n)) % n));
            Assert.Equal((n, m), (Transforms.TurnFigure(motif).Rows, Transforms.TurnFigure(motif).Columns));
        });

    [Fact]
    public void Turning_swapping_and_mirroring_go_together_as_in_cloth() =>
        DocumentGen.Motifs(8, 8).Sample(motif =>
        {
            Assert.Equal(Transforms.MirrorAcross(Transforms.Swap(motif)), Transforms.OtherSide(motif));
            Assert.Equal(Transforms.HalfTurn(motif), Twice(Transforms.TurnCloth, motif));
            Assert.Equal(Transforms.TurnFigure(Transforms.Swap(motif)), Transforms.TurnCloth(motif));
            Assert.Equal(Transforms.MirrorAlong(Transforms.TurnFigure(motif)), Transforms.TurnFigure(Transforms.MirrorAcross(motif)));

            // what is done to the cloth changes nothing in whether it hangs together, nor how it repeats
            Func<BitGrid, BitGrid>[] ofCloth = [Transforms.OtherSide, Transforms.HalfTurn, Transforms.TurnCloth, Transforms.MirrorAcross, Transforms.MirrorAlong, Transforms.Swap, grid => Transforms.Shift(grid, 1, 2)];
            Assert.All(ofCloth, change => Assert.Equal(HangsTogether.Test(motif), HangsTogether.Test(change(motif))));
            var symmetry = Symmetry.Of(motif);
            Assert.Equal((symmetry.Across, symmetry.Along), (Symmetry.Of(Transforms.TurnCloth(motif)).Along, Symmetry.Of(Transforms.TurnCloth(motif)).Across));
        });

    [Fact]
    public void Repeating_fills_from_the_lower_left_and_cutting_takes_a_part() =>
        Gen.Select(DocumentGen.Motifs(6, 6), Gen.Int[1, 15], Gen.Int[1, 15]).Sample((motif, rows, ends) =>
        {
            var repeated = Transforms.RepeatTo(motif, rows, ends);
            Assert.Equal((rows, ends), (repeated.Rows, repeated.Columns));
            Assert.All(Enumerable.Range(0, rows * ends), cell => Assert.Equal(motif[cell / ends % motif.Rows, cell % ends % motif.Columns], repeated[cell / ends, cell % ends]));
            var part = new CellRectangle(rows / 3, ends / 2, rows - (rows / 3), ends - (ends / 2));
            var cut = Transforms.Cut(repeated, part);
            Assert.Equal((part.Rows, part.Columns), (cut.Rows, cut.Columns));
            Assert.All(Enumerable.Range(0, cut.Rows * cut.Columns), cell => Assert.Equal(repeated[part.Row + (cell / cut.Columns), part.Column + (cell % cut.Columns)], cut[cell / cut.Columns, cell % cut.Columns]));
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
