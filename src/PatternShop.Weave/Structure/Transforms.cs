namespace PatternShop.Weave;

/// <summary>Whole-grid changes of a motif. Rows run upwards (row 0 is woven first), columns are ends from the left; true is over.</summary>
public static class Transforms
{
    /// <summary>Left and right exchanged.</summary>
    public static BitGrid MirrorAcross(BitGrid grid) => Map(grid, grid.Rows, grid.Columns, (row, column) => (row, grid.Columns - 1 - column));

    /// <summary>Top and bottom exchanged.</summary>
    public static BitGrid MirrorAlong(BitGrid grid) => Map(grid, grid.Rows, grid.Columns, (row, column) => (grid.Rows - 1 - row, column));

    /// <summary>Turned by half a turn.</summary>
    public static BitGrid HalfTurn(BitGrid grid) => Map(grid, grid.Rows, grid.Columns, (row, column) => (grid.Rows - 1 - row, grid.Columns - 1 - column));

    /// <summary>The figure turned a quarter turn clockwise as seen on the chart (row 1 at the bottom): the cells move, over stays over.</summary>
    public static BitGrid TurnFigure(BitGrid grid) => Map(grid, grid.Columns, grid.Rows, (row, column) => (column, grid.Columns - 1 - row));

    /// <summary>
    /// The cloth turned a quarter turn clockwise: ends become rows and rows ends, so the thread that lay over as a weft lies over as a
    /// warp, and over and under change places with the threads.
    /// </summary>
    public static BitGrid TurnCloth(BitGrid grid) => Swap(TurnFigure(grid));

    /// <summary>Over and under exchanged.</summary>
    public static BitGrid Swap(BitGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        return BitGrid.Create(grid.Rows, grid.Columns, (row, column) => !grid[row, column]);
    }

    /// <summary>The other side of the cloth, turned over like a page: over and under exchanged and left and right exchanged.</summary>
    public static BitGrid OtherSide(BitGrid grid) => Swap(MirrorAcross(grid));

    /// <summary>Moved to the right and upwards; what leaves at one side comes in at the other.</summary>
    /// <param name="grid">The motif.</param>
    /// <param name="ends">Ends to the right; negative to the left.</param>
    /// <param name="rows">Rows upwards; negative downwards.</param>
    public static BitGrid Shift(BitGrid grid, int ends, int rows) =>
        Map(grid, grid.Rows, grid.Columns, (row, column) => (Modulo(row - rows, grid.Rows), Modulo(column - ends, grid.Columns)));

    /// <summary>A part of the grid.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The part does not lie within the grid.</exception>
    public static BitGrid Cut(BitGrid grid, CellRectangle part)
    {
        ArgumentNullException.ThrowIfNull(grid);
        if (!part.LiesIn(grid.Rows, grid.Columns))
        {
            throw new ArgumentOutOfRangeException(nameof(part), part, "The part does not lie within the grid.");
        }

        return Map(grid, part.Rows, part.Columns, (row, column) => (row + part.Row, column + part.Column));
    }

    /// <summary>Repeated from the lower left corner until it is this large; a last partial repeat is cut.</summary>
    public static BitGrid RepeatTo(BitGrid grid, int rows, int columns) =>
        Map(grid, rows, columns, (row, column) => (row % grid.Rows, column % grid.Columns));

    private static BitGrid Map(BitGrid grid, int rows, int columns, Func<int, int, (int Row, int Column)> source)
    {
        ArgumentNullException.ThrowIfNull(grid);
        return BitGrid.Create(rows, columns, (row, column) =>
        {
            var (r, c) = source(row, column);
            return grid[r, c];
        });
    }

    private static int Modulo(int value, int by) => ((value % by) + by) % by;
}
