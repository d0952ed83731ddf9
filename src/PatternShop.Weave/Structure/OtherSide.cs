namespace PatternShop.Weave;

/// <summary>The other side of the cloth.</summary>
public static class OtherSide
{
    /// <summary>What the back shows when the cloth is turned over like a page: over and under swapped and left and right mirrored.</summary>
    public static BitGrid Of(BitGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        return BitGrid.Create(grid.Rows, grid.Columns, (row, column) => !grid[row, grid.Columns - 1 - column]);
    }
}
