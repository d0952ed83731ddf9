using System.Numerics;

namespace PatternShop.Weave;

/// <summary>The runs of equal cells in one packed row, from its first column to its last.</summary>
internal ref struct BitRuns(ReadOnlySpan<ulong> words, int columns)
{
    private readonly ReadOnlySpan<ulong> _words = words;

    /// <summary>First column of the run, from 0.</summary>
    public int First { get; private set; }

    /// <summary>Cells in the run.</summary>
    public int Count { get; private set; }

    /// <summary>What its cells are.</summary>
    public bool Over { get; private set; }

    /// <summary>Goes on to the next run; false after the last.</summary>
    public bool Next()
    {
        First += Count;
        if (First >= columns)
        {
            return false;
        }

        var at = First >> 6;
        Over = (_words[at] >> (First & 63) & 1) != 0;
        var same = Over ? ulong.MaxValue : 0;
        var other = (_words[at] ^ same) & (ulong.MaxValue << (First & 63));
        while (other == 0 && ++at < _words.Length)
        {
            other = _words[at] ^ same;
        }

        Count = (other == 0 ? columns : Math.Min(columns, (at << 6) + BitOperations.TrailingZeroCount(other))) - First;
        return true;
    }
}
