namespace PatternShop.Weave;

/// <summary>
/// The rows of a motif that repeats without end across, each as a ring of cells: which of them are the same ring, and how far each is
/// turned against the least of its rotations.
/// </summary>
internal sealed class RowNecklaces
{
    private RowNecklaces(int[] ring, int[] turn, int[] period) => (Ring, Turn, Period) = (ring, turn, period);

    /// <summary>For every row a number that rows of the same ring share.</summary>
    public int[] Ring { get; }

    /// <summary>For every row the cell at which the least rotation begins, from 0 below its period.</summary>
    public int[] Turn { get; }

    /// <summary>For every row after how many cells its ring repeats; it goes into the number of ends.</summary>
    public int[] Period { get; }

    /// <summary>The rows of a grid, and after them the same rows read backwards about end 0.</summary>
    public static RowNecklaces Of(BitGrid grid)
    {
        var (rows, width) = (2 * grid.Rows, grid.Columns);
        var (turn, period) = (new int[rows], new int[rows]);
        var least = new ulong[rows * grid.WordsPerRow];
        var cells = new byte[2 * width];
        for (var row = 0; row < rows; row++)
        {
            Unpack(grid.RowWords(row % grid.Rows), cells, backwards: row >= grid.Rows);
            (turn[row], period[row]) = Least(cells, width);
            Pack(cells.AsSpan(turn[row], width), least.AsSpan(row * grid.WordsPerRow, grid.WordsPerRow));
        }

        return new RowNecklaces(ThreadNames.OfRows(BitGrid.FromWords(rows, width, least)), turn, period);
    }

    // Where the least rotation begins, and the period of the ring: two beginnings run against each other, the greater one skips what was
    // compared, and where they agree all the way round they are a period apart.
    private static (int Turn, int Period) Least(byte[] twice, int length)
    {
        var (a, b, same) = (0, 1, 0);
        while (a < length && b < length && same < length)
        {
            var (x, y) = (twice[a + same], twice[b + same]);
            if (x == y)
            {
                same++;
                continue;
            }

            if (x > y)
            {
                a += same + 1;
            }
            else
            {
                b += same + 1;
            }

            b += a == b ? 1 : 0;
            same = 0;
        }

        return (Math.Min(a, b), same == length ? Math.Abs(a - b) : length);
    }

    private static void Unpack(ReadOnlySpan<ulong> words, byte[] twice, bool backwards)
    {
        var length = twice.Length / 2;
        for (var i = 0; i < length; i++)
        {
            twice[i] = (byte)(words[i >> 6] >> (i & 63) & 1);
        }

        if (backwards)
        {
            Array.Reverse(twice, 1, length - 1);
        }

        Array.Copy(twice, 0, twice, length, length);
    }

    private static void Pack(ReadOnlySpan<byte> cells, Span<ulong> words)
    {
        for (var i = 0; i < cells.Length; i++)
        {
            words[i >> 6] |= (ulong)cells[i] << (i & 63);
        }
    }
}
