using System.Numerics;

namespace PatternShop.Weave;

/// <summary>
/// What happens in the woven piece where repeated rows begin again, or where the closing rows follow the last time.
/// </summary>
/// <param name="Row">The last row of a time through, from 1; the next row begins again or closes.</param>
/// <param name="Closes">Whether closing rows follow; else the repeated rows begin again.</param>
/// <param name="Across">
/// Rows of the longest float of an end across the seam, on either side of the cloth; 1 when no end floats across it.
/// </param>
/// <param name="Columns">The ends that float so long, from 0 at the left, floating ones included; empty when none does.</param>
/// <param name="Elsewhere">Rows of the longest float of an end that crosses no seam of the piece.</param>
/// <param name="SameRow">Whether the weft does the same at every pattern end in the two rows.</param>
/// <param name="Turn">The turn there; null where another weft goes on, or a stitch has taken the weft across.</param>
public sealed record Seam(int Row, bool Closes, int Across, Sequence<int> Columns, int Elsewhere, bool SameRow, Turn? Turn)
{
    /// <summary>Whether the seam shows: an end floats longer across it than anywhere else, or one row is woven twice.</summary>
    public bool Shows => Across > Elsewhere || SameRow;
}

/// <summary>Looks at the seams of a piece.</summary>
public static class Seams
{
    /// <summary>
    /// For every group of repeated rows the seam to the second time, and to the third where that may look otherwise because the rows read
    /// differently or plain rows alternate; then that to the closing rows. In the order in which they are woven.
    /// </summary>
    public static Sequence<Seam> Of(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var rows = piece.Bands.SelectMany(SeamsOf).Where(row => row < piece.Rows.Count).ToList();
        if (rows.Count == 0)
        {
            return [];
        }

        var cells = new PieceColumns(piece);
        var elsewhere = Stretches(piece).Select(stretch => cells.LongestWithin(stretch.First, stretch.Last)).Max();
        var turns = Turns.Of(piece).Where(turn => rows.Contains(turn.Row)).ToDictionary(turn => turn.Row);
        var names = SourceNames.Of(piece);
        return rows.Select(row =>
        {
            var (across, columns) = cells.LongestAcross(row);
            var (reading, next) = (piece.Rows[row - 1].Reading, piece.Rows[row].Reading);
            var closes = !piece.Bands.Any(band => band.Kind == BandKind.Repeated && band.FirstRow <= row && row < band.LastRow);
            var turn = turns.TryGetValue(row, out var found) && found.Next == row + 1 ? found : (Turn?)null;
            return new Seam(row, closes, across, columns, elsewhere, names[reading] == names[next], turn);
        }).ToSequence();
    }

    // After time 1; after time 2 if the third time is woven and the second is not like the first; after the last.
    private static IEnumerable<int> SeamsOf(Band band) => band.Kind != BandKind.Repeated
        ? []
        : new[] { 1, band.ReadsDifferently && band.Times > 2 ? 2 : 1, band.Times }.Distinct().Select(time => band.FirstRowOf(time + 1) - 1);

    // The rows between seams. The third time through is like the first, the fourth like the second.
    private static IEnumerable<(int First, int Last)> Stretches(Piece piece)
    {
        var first = 1;
        foreach (var band in piece.Bands.Where(band => band.Kind == BandKind.Repeated))
        {
            yield return (first, band.FirstRowOf(2) - 1);
            yield return (band.FirstRowOf(2), band.FirstRowOf(3) - 1);
            first = band.LastRow + 1;
        }

        if (first <= piece.Rows.Count)
        {
            yield return (first, piece.Rows.Count);
        }
    }

    // Neighbouring rows of the woven piece laid on one another: where they differ, an end comes through.
    private sealed class PieceColumns(Piece piece)
    {
        private readonly int _words = piece.Cells.WordsPerRow;
        private readonly int[] _longest = new int[piece.Ends];

        /// <summary>The longest float across the seam after a row, and the ends that have it.</summary>
        public (int Rows, Sequence<int> Columns) LongestAcross(int row)
        {
            var stays = new ulong[_words];
            Array.Fill(stays, ulong.MaxValue);
            KeepStaying(stays, row);
            var below = LengthsFrom(stays, row, -1);
            var above = LengthsFrom(stays, row, 1);
            var longest = 1;
            var columns = new List<int>();
            for (var column = 0; column < piece.Ends; column++)
            {
                if ((stays[column >> 6] >> (column & 63) & 1) == 0)
                {
                    continue;
                }

                var rows = below[column] + above[column];
                if (rows > longest)
                {
                    longest = rows;
                    columns.Clear();
                }

                if (rows == longest)
                {
                    columns.Add(column);
                }
            }

            return (longest, columns.ToSequence());
        }

        /// <summary>The longest float of an end within some rows, from 1, both counted.</summary>
        public int LongestWithin(int first, int last)
        {
            var since = new int[piece.Ends];
            Array.Fill(since, first);
            for (var row = first; row < last; row++)
            {
                var a = piece.Cells.RowWords(piece.Rows[row - 1].Reading);
                var b = piece.Cells.RowWords(piece.Rows[row].Reading);
                for (var word = 0; word < _words; word++)
                {
                    for (var changed = a[word] ^ b[word]; changed != 0; changed &= changed - 1)
                    {
                        var end = (word << 6) + BitOperations.TrailingZeroCount(changed);
                        _longest[end] = Math.Max(_longest[end], row + 1 - since[end]);
                        since[end] = row + 1;
                    }
                }
            }

            return Enumerable.Range(0, piece.Ends).Max(end => Math.Max(_longest[end], last + 1 - since[end]));
        }

        // Rows from the seam downwards or upwards through which each end stays on the side on which it crosses.
        private int[] LengthsFrom(ulong[] crossing, int row, int stride)
        {
            var lengths = new int[piece.Ends];
            var stays = (ulong[])crossing.Clone();
            for (var (rows, at) = (1, stride > 0 ? row + 1 : row); ; rows++, at += stride)
            {
                for (var word = 0; word < _words; word++)
                {
                    for (var left = stays[word]; left != 0; left &= left - 1)
                    {
                        lengths[(word << 6) + BitOperations.TrailingZeroCount(left)] = rows;
                    }
                }

                var next = stride > 0 ? at : at - 1;
                if (next < 1 || next >= piece.Rows.Count || !KeepStaying(stays, next))
                {
                    return lengths;
                }
            }
        }

        // Keeps the ends that do the same in a row and the next; answers whether any is left.
        private bool KeepStaying(ulong[] ends, int row)
        {
            var a = piece.Cells.RowWords(piece.Rows[row - 1].Reading);
            var b = piece.Cells.RowWords(piece.Rows[row].Reading);
            var any = 0UL;
            for (var word = 0; word < ends.Length; word++)
            {
                var used = word < ends.Length - 1 || (piece.Ends & 63) == 0 ? ulong.MaxValue : (1UL << (piece.Ends & 63)) - 1;
                any |= ends[word] &= ~(a[word] ^ b[word]) & used;
            }

            return any != 0;
        }
    }
}
