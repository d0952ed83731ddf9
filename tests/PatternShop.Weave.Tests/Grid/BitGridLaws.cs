using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class BitGridLaws
{
    // Up to three words a row, so that the seams between words are met.
    private static readonly Gen<BitGrid> Grids =
        from rows in Gen.OneOf(Gen.Int[1, 6], Gen.Int[60, 130])
        from columns in Gen.OneOf(Gen.Int[1, 8], Gen.Int[60, 140])
        from cells in Gen.Bool.Array[rows * columns]
        select BitGrid.Create(rows, columns, (row, column) => cells[(row * columns) + column]);

    [Fact]
    public void Transposing_twice_changes_nothing() => Grids.Sample(
        grid =>
        {
            Assert.Equal(grid, grid.Transpose().Transpose());
            Assert.Equal(grid.GetHashCode(), grid.Transpose().Transpose().GetHashCode());
        },
        iter: Effort.Of(300, 20_000));

    [Fact]
    public void Transposing_makes_rows_of_columns() => Grids.Sample(
        grid =>
        {
            var turned = grid.Transpose();
            Assert.Equal((grid.Columns, grid.Rows), (turned.Rows, turned.Columns));
            Assert.All(Cells(grid), cell => Assert.Equal(grid[cell.Row, cell.Column], turned[cell.Column, cell.Row]));
        },
        iter: Effort.Of(50, 2_000));

    [Fact]
    public void The_text_form_reads_back() => Grids.Sample(
        grid =>
        {
            var text = GridText.Write(grid);
            Assert.Equal(grid, GridText.Read(text));
            Assert.All(Cells(grid), cell => Assert.Equal(grid[cell.Row, cell.Column] ? 'x' : '.', text[cell.Row][cell.Column]));
        },
        iter: Effort.Of(50, 2_000));

    [Fact]
    public void Words_read_back_and_bits_past_the_last_column_do_not_count() => Grids.Sample(
        grid =>
        {
            var words = Enumerable.Range(0, grid.Rows).SelectMany(row => grid.RowWords(row).ToArray()).ToArray();
            Assert.Equal(grid, BitGrid.FromWords(grid.Rows, grid.Columns, words));
            if (grid.Columns % 64 != 0)
            {
                words[^1] |= 1UL << 63;
                Assert.Equal(grid, BitGrid.FromWords(grid.Rows, grid.Columns, words));
            }
        },
        iter: Effort.Of(200, 5_000));

    [Fact]
    public void Setting_a_cell_changes_that_cell_alone_and_not_the_grid_it_was_set_in() =>
        Gen.Select(Grids, Gen.Int[0, 1_000_000]).Sample(
            (grid, at) =>
            {
                var before = GridText.Write(grid);
                var (row, column) = (at % grid.Rows, at % grid.Columns);
                var changed = grid.With(row, column, !grid[row, column]);
                Assert.NotEqual(grid, changed);
                Assert.Equal(before, GridText.Write(grid));
                Assert.Equal(1, Math.Abs(grid.Count - changed.Count));
                Assert.Equal(grid, changed.With(row, column, grid[row, column]));
                Assert.Same(grid, grid.With(row, column, grid[row, column]));
            },
            iter: Effort.Of(200, 5_000));

    [Fact]
    public void Grids_are_equal_when_their_cells_are_and_sizes_count()
    {
        Assert.Equal(GridText.Read("x.", ".x"), BitGrid.Create(2, 2, (row, column) => row == column));
        Assert.NotEqual(GridText.Read("..", ".."), GridText.Read("...."));
        Assert.NotEqual(GridText.Read("..", ".."), GridText.Read("..."));
    }

    [Fact]
    public void Cells_outside_are_refused()
    {
        var grid = GridText.Read("xx", "xx");
        Assert.All(
            new[] { (-1, 0), (2, 0), (0, -1), (0, 2), (0, 63) },
            at => Assert.Throws<ArgumentOutOfRangeException>(() => grid[at.Item1, at.Item2]));
        Assert.Throws<ArgumentException>(() => BitGrid.FromWords(2, 2, [0]));
    }

    [Theory]
    [InlineData]
    [InlineData("")]
    [InlineData("xx", "x")]
    [InlineData("xX")]
    public void Texts_that_are_no_grid_are_refused(params string[] rows) => Assert.Throws<FormatException>(() => GridText.Read(rows));

    internal static IEnumerable<(int Row, int Column)> Cells(BitGrid grid) =>
        from row in Enumerable.Range(0, grid.Rows) from column in Enumerable.Range(0, grid.Columns) select (row, column);
}
