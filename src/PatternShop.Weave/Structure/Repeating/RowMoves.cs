namespace PatternShop.Weave;

/// <summary>
/// Finds by how many rows and ends together a repeated motif can be moved or turned onto itself: rows that come to lie on one another
/// must be the same ring of cells, and all rows together must agree by how much they are turned.
/// </summary>
internal sealed class RowMoves
{
    private readonly int _rows;
    private readonly Lazy<RowNecklaces> _necklaces;
    private readonly int[] _name;
    private readonly int[] _count;

    public RowMoves(BitGrid motif, int[] names)
    {
        _rows = motif.Rows;
        var distinct = Enumerable.Range(0, _rows).Where(row => names[row] == row).ToArray();
        var place = new int[_rows];
        for (var i = 0; i < distinct.Length; i++)
        {
            place[distinct[i]] = i;
        }

        _name = [.. names.Select(first => place[first])];
        _count = [.. names.Select(first => PopCount(motif.RowWords(first)))];
        _necklaces = new Lazy<RowNecklaces>(() => RowNecklaces.Of(Rows(motif, distinct)));
        Distinct = distinct.Length;
    }

    private int Distinct { get; }

    /// <summary>The smallest move up, and to the right as little as goes with it.</summary>
    public (int Up, int Aside) SmallestUp()
    {
        // all moves up are multiples of the smallest, and the whole motif is one
        foreach (var up in Divisors.Of(_rows).Where(up => up < _rows))
        {
            if (CountsAgree(row => (row + up) % _rows) && Agree(row => (row + up) % _rows, 0, (from, to) => Necklace.Turn[to] - Necklace.Turn[from]) is { } aside)
            {
                return (up, aside);
            }
        }

        return (_rows, 0);
    }

    /// <summary>The sums of the first half turn; they come back every so many rows as the motif can be moved up.</summary>
    public (int Rows, int Ends)? FirstHalfTurn(int up)
    {
        for (var sum = 0; sum < up; sum++)
        {
            int Other(int row) => sum >= row ? sum - row : sum - row + _rows;
            if (CountsAgree(Other) && Agree(Other, Distinct, (from, to) => Necklace.Turn[from] - Necklace.Turn[to]) is { } ends)
            {
                return (sum, ends);
            }
        }

        return null;
    }

    private RowNecklaces Necklace => _necklaces.Value;

    private static BitGrid Rows(BitGrid motif, int[] rows)
    {
        var words = new ulong[rows.Length * motif.WordsPerRow];
        for (var i = 0; i < rows.Length; i++)
        {
            motif.RowWords(rows[i]).CopyTo(words.AsSpan(i * motif.WordsPerRow));
        }

        return BitGrid.FromWords(rows.Length, motif.Columns, words);
    }

    // Rows with different numbers of overs cannot lie on one another: most charts need no closer look.
    private bool CountsAgree(Func<int, int> other)
    {
        for (var row = 0; row < _rows; row++)
        {
            if (_count[row] != _count[other(row)])
            {
                return false;
            }
        }

        return true;
    }

    // The least number of ends that suits every row; null when there is none. Each row fixes it modulo its own period.
    private int? Agree(Func<int, int> other, int after, Func<int, int, int> turned)
    {
        var (value, step) = (0, 1);
        for (var row = 0; row < _rows; row++)
        {
            var (from, to) = (_name[row], _name[other(row)] + after);
            if (Necklace.Ring[from] != Necklace.Ring[to])
            {
                return null;
            }

            var period = Necklace.Period[from];
            var wanted = ((turned(from, to) % period) + period) % period;
            var common = Divisors.Greatest(step, period);
            if ((value - wanted) % common != 0)
            {
                return null;
            }

            while (value % period != wanted)
            {
                value += step;
            }

            step = step / common * period;
        }

        return value;
    }

    private static int PopCount(ReadOnlySpan<ulong> words)
    {
        var count = 0;
        foreach (var word in words)
        {
            count += System.Numerics.BitOperations.PopCount(word);
        }

        return count;
    }
}
