namespace PatternShop.Weave;

/// <summary>The text form of a grid: one string a row, row 1 first, 'x' for a true cell (over) and '.' for a false one (under).</summary>
public static class GridText
{
    public const char Over = 'x';
    public const char Under = '.';

    /// <summary>Writes each row as a string of <see cref="BitGrid.Columns"/> characters.</summary>
    public static Sequence<string> Write(BitGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        return Enumerable.Range(0, grid.Rows)
            .Select(row => string.Create(grid.Columns, (grid, row), static (span, at) =>
            {
                for (var column = 0; column < span.Length; column++)
                {
                    span[column] = at.grid[at.row, column] ? Over : Under;
                }
            }))
            .ToSequence();
    }

    /// <summary>Reads rows that are known to be well formed, as in tests and code; input of people goes through the pattern reader.</summary>
    /// <exception cref="FormatException">No rows, rows of unequal length, or a character other than 'x' and '.'.</exception>
    public static BitGrid Read(params IReadOnlyList<string> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Count == 0 || rows[0].Length == 0)
        {
            throw new FormatException("A grid has at least one row and one column.");
        }

        if (rows.FirstOrDefault(row => row.Length != rows[0].Length || row.Any(c => c is not (Over or Under))) is { } bad)
        {
            throw new FormatException($"'{bad}' is not a row of {rows[0].Length} characters, each '{Over}' or '{Under}'.");
        }

        return BitGrid.Create(rows.Count, rows[0].Length, (row, column) => rows[row][column] == Over);
    }
}
