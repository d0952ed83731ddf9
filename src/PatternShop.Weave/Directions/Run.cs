using System.Numerics;
using System.Runtime.InteropServices;

namespace PatternShop.Weave;

/// <summary>Neighbouring ends of one row, all over or all under.</summary>
/// <param name="Stroke">What the weft does there.</param>
/// <param name="Count">Number of ends, at least 1.</param>
public readonly record struct Run(Stroke Stroke, int Count);

/// <summary>The runs of a row.</summary>
public static class Runs
{
    /// <summary>
    /// The runs of one row of cells in the direction of travel. Their counts add up to the number of columns and
    /// neighbours differ in stroke.
    /// </summary>
    /// <param name="cells">Rows × ends, true where the weft is over.</param>
    /// <param name="row">The row, from 0.</param>
    /// <param name="from">The side at which the weft enters.</param>
    public static Sequence<Run> Of(BitGrid cells, int row, Side from)
    {
        ArgumentNullException.ThrowIfNull(cells);
        var words = cells.RowWords(row);
        var runs = new List<Run>((cells.Columns / 2) + 1);
        var over = (words[0] & 1) != 0;
        for (var start = 0; start < cells.Columns; over = !over)
        {
            var end = Math.Min(NextChange(words, start, over), cells.Columns);
            runs.Add(new Run(over ? Stroke.Over : Stroke.Under, end - start));
            start = end;
        }

        if (from == Side.Right)
        {
            runs.Reverse();
        }

        return Sequence.Of<Run>(CollectionsMarshal.AsSpan(runs));
    }

    // The first column from start on whose cell is not `over`; past the end when there is none.
    private static int NextChange(ReadOnlySpan<ulong> words, int start, bool over)
    {
        var word = start >> 6;
        var rest = (over ? ~words[word] : words[word]) >> (start & 63) << (start & 63);
        while (rest == 0)
        {
            if (++word == words.Length)
            {
                return int.MaxValue;
            }

            rest = over ? ~words[word] : words[word];
        }

        return (word << 6) + BitOperations.TrailingZeroCount(rest);
    }
}
