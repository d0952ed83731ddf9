using System.Numerics;

namespace PatternShop.Weave;

/// <summary>A stretch of rows that pass one end on the same side.</summary>
/// <param name="Column">The end, from 0, floating ends included.</param>
/// <param name="First">First row, from 1.</param>
/// <param name="Last">Last row.</param>
/// <param name="Over">Whether the weft is over there.</param>
/// <param name="Times">How often it recurs: itself, and every two times through repeated rows again.</param>
internal readonly record struct WarpRun(int Column, int First, int Last, bool Over, int Times)
{
    public int Count => Last - First + 1;
}

/// <summary>
/// Goes through the whole piece once, looking only at the ends that change from a row to the next. Repeated rows do the same at every
/// end two times later, so that a long piece takes no longer than its first four times through; the rest is counted.
/// </summary>
internal sealed class WarpRuns
{
    private const int TimesLookedAt = 4;

    private readonly Piece _piece;
    private readonly Action<WarpRun> _visit;
    private readonly int[] _first;

    private WarpRuns(Piece piece, Action<WarpRun> visit)
    {
        (_piece, _visit) = (piece, visit);
        _first = new int[piece.Ends];
        Array.Fill(_first, 1);
    }

    /// <summary>Calls <paramref name="visit"/> for every stretch, in the order in which they end; those of later times through with the first that is like them.</summary>
    public static void Visit(Piece piece, Action<WarpRun> visit)
    {
        var runs = new WarpRuns(piece, visit);
        var before = piece.Rows[0].Reading;
        foreach (var band in piece.Bands)
        {
            before = runs.Band(band, before);
        }

        var last = piece.Cells.RowWords(before);
        for (var column = 0; column < piece.Ends; column++)
        {
            runs.End(column, piece.Rows.Count, (last[column >> 6] >> (column & 63) & 1) != 0, 1);
        }
    }

    // the reading of the last row of the band
    private int Band(Band band, int before)
    {
        var skipped = Math.Max(0, (band.Times - TimesLookedAt) / 2 * 2);
        var (secondPair, afterPair) = (band.FirstRow + (2 * band.RowsEachTime), band.FirstRow + (4 * band.RowsEachTime));
        for (var row = band.FirstRow; row <= band.LastRow; row++)
        {
            if (skipped > 0 && row == afterPair)
            {
                row += skipped * band.RowsEachTime;
                Skip(secondPair, skipped * band.RowsEachTime);
                if (row > band.LastRow)
                {
                    break;
                }
            }

            var recurs = row >= secondPair && row < afterPair ? 1 + (skipped / 2) : 1;
            var now = _piece.Rows[row - 1].Reading;
            if (now != before)
            {
                Change(before, now, row, recurs);
            }

            before = now;
        }

        return before;
    }

    // an end that did not change in two times through never does in these rows: its stretch goes on across those that are skipped
    private void Skip(int from, int rows)
    {
        for (var column = 0; column < _first.Length; column++)
        {
            _first[column] += _first[column] >= from ? rows : 0;
        }
    }

    private void Change(int before, int now, int row, int recurs)
    {
        var old = _piece.Cells.RowWords(before);
        var words = _piece.Cells.RowWords(now);
        for (var word = 0; word < words.Length; word++)
        {
            for (var changed = old[word] ^ words[word]; changed != 0; changed &= changed - 1)
            {
                var bit = BitOperations.TrailingZeroCount(changed);
                End((word << 6) + bit, row - 1, (old[word] >> bit & 1) != 0, recurs);
            }
        }
    }

    private void End(int column, int last, bool over, int recurs)
    {
        _visit(new WarpRun(column, _first[column], last, over, recurs));
        _first[column] = last + 1;
    }
}
