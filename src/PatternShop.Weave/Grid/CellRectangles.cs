namespace PatternShop.Weave;

/// <summary>A block of cells: first row and column from 0, and how many of each.</summary>
public readonly record struct CellRectangle(int Row, int Column, int Rows, int Columns)
{
    /// <summary>Whether a cell, row and column from 0, is one of the block.</summary>
    public bool Holds(int row, int column) => row >= Row && row < Row + Rows && column >= Column && column < Column + Columns;

    /// <summary>Whether the block has a cell and every one of them lies in a grid of so many rows and columns.</summary>
    public bool LiesIn(int rows, int columns) =>
        this is { Row: >= 0, Column: >= 0, Rows: > 0, Columns: > 0 } && Rows <= rows - Row && Columns <= columns - Column;
}

/// <summary>Covers the true cells of a grid with few rectangles that do not overlap, so that pictures and pages stay small.</summary>
public static class CellRectangles
{
    /// <summary>
    /// Rectangles that cover exactly the true cells, each once: neighbouring cells of a row are joined first, then equal
    /// stretches of rows that follow one another. Ordered by the row and column of their first cell.
    /// </summary>
    public static Sequence<CellRectangle> Cover(BitGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        var done = new List<CellRectangle>();
        var open = new Dictionary<(int Column, int Columns), int>();
        for (var row = 0; row <= grid.Rows; row++)
        {
            var next = new Dictionary<(int Column, int Columns), int>();
            if (row < grid.Rows)
            {
                foreach (var stretch in Stretches(grid, row))
                {
                    next[stretch] = open.Remove(stretch, out var since) ? since : row;
                }
            }

            done.AddRange(open.Select(pair => new CellRectangle(pair.Value, pair.Key.Column, row - pair.Value, pair.Key.Columns)));
            open = next;
        }

        return done.OrderBy(r => r.Row).ThenBy(r => r.Column).ToSequence();
    }

    private static IEnumerable<(int Column, int Columns)> Stretches(BitGrid grid, int row)
    {
        var start = -1;
        for (var column = 0; column <= grid.Columns; column++)
        {
            var set = column < grid.Columns && grid[row, column];
            if (set && start < 0)
            {
                start = column;
            }
            else if (!set && start >= 0)
            {
                yield return (start, column - start);
                start = -1;
            }
        }
    }
}
