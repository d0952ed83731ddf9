using PatternShop.Tests.Shared;
using CsCheck;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class CellRectangleLaws
{
    [Fact]
    public void Rectangles_cover_exactly_the_true_cells_once() => DocumentGen.Motifs(14, 14).Sample(
        grid => Assert.True(CoversOnce(grid, CellRectangles.Cover(grid)), grid.ToString()),
        iter: Effort.Of(1_000, 100_000));

    [Fact]
    public void A_missing_a_doubled_and_a_stray_rectangle_would_be_seen()
    {
        var grid = GridText.Read("xx.", ".xx", "..x");
        var cover = CellRectangles.Cover(grid);
        Assert.True(CoversOnce(grid, cover));
        Assert.False(CoversOnce(grid, cover.Skip(1)));
        Assert.False(CoversOnce(grid, cover.Append(cover[0])));
        Assert.False(CoversOnce(grid, cover.Append(new CellRectangle(2, 0, 1, 1))));
    }

    [Fact]
    public void A_filled_block_is_one_rectangle_and_order_is_by_first_cell()
    {
        Assert.Equal([new CellRectangle(0, 0, 3, 4)], CellRectangles.Cover(GridText.Read("xxxx", "xxxx", "xxxx")));
        Assert.Equal(
            [new CellRectangle(0, 0, 2, 1), new CellRectangle(0, 2, 1, 2), new CellRectangle(1, 2, 1, 1)],
            CellRectangles.Cover(GridText.Read("x.xx", "x.x.")));
        Assert.Empty(CellRectangles.Cover(GridText.Read("..", "..")));
    }

    private static bool CoversOnce(BitGrid grid, IEnumerable<CellRectangle> rectangles)
    {
        var times = new int[grid.Rows, grid.Columns];
        foreach (var block in rectangles)
        {
            for (var row = block.Row; row < block.Row + block.Rows; row++)
            {
                for (var column = block.Column; column < block.Column + block.Columns; column++)
                {
                    times[row, column]++;
                }
            }
        }

        return BitGridLaws.Cells(grid).All(cell => times[cell.Row, cell.Column] == (grid[cell.Row, cell.Column] ? 1 : 0));
    }
}
