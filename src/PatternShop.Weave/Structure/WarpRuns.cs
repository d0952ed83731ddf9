using System.Numerics;

namespace PatternShop.Weave;

/// <summary>A stretch of rows that pass one end on the same side.</summary>
/// <param name="Column">The end, from 0, floating ends included.</param>
/// <param name="First">First row, from 1.</param>
/// <param name="Last">Last row.</param>
/// <param name="Over">Whether the weft is over there.</param>
internal readonly record struct WarpRun(int Column, int First, int Last, bool Over)
{
    public int Count => Last - First + 1;
}

/// <summary>Goes through the whole piece once, looking only at the ends that change from a row to the next.</summary>
internal static class WarpRuns
{
    /// <summary>Calls <paramref name="visit"/> for every stretch, in the order in which they end.</summary>
    public static void Visit(Piece piece, Action<WarpRun> visit)
    {
        var first = new int[piece.Ends];
        Array.Fill(first, 1);
        var rows = piece.Rows.AsSpan();
        for (var at = 1; at < rows.Length; at++)
        {
            if (rows[at].Reading != rows[at - 1].Reading)
            {
                Change(piece.Cells.RowWords(rows[at - 1].Reading), piece.Cells.RowWords(rows[at].Reading), at + 1, first, visit);
            }
        }

        var last = piece.Cells.RowWords(rows[^1].Reading);
        for (var column = 0; column < first.Length; column++)
        {
            visit(new WarpRun(column, first[column], rows.Length, (last[column >> 6] >> (column & 63) & 1) != 0));
        }
    }

    private static void Change(ReadOnlySpan<ulong> before, ReadOnlySpan<ulong> now, int row, int[] first, Action<WarpRun> visit)
    {
        for (var word = 0; word < now.Length; word++)
        {
            for (var changed = before[word] ^ now[word]; changed != 0; changed &= changed - 1)
            {
                var bit = BitOperations.TrailingZeroCount(changed);
                var column = (word << 6) + bit;
                visit(new WarpRun(column, first[column], row - 1, (before[word] >> bit & 1) != 0));
                first[column] = row;
            }
        }
    }
}
