namespace PatternShop.Weave;

/// <summary>One way to make the pattern ends mirror left to right.</summary>
/// <param name="Offset">The offset, from 0.</param>
/// <param name="Balance">Balance ends that it takes.</param>
public readonly record struct MirrorWay(int Offset, int Balance);

/// <summary>A way to mirror together with what it puts in the middle of the piece.</summary>
/// <param name="Way">Offset and balance ends.</param>
/// <param name="Middle">Where in the motif the middle of the piece lies.</param>
/// <param name="Figure">
/// What is seen there: all rows of the motif over one motif's width of ends about the middle, or one end more where it could not be centred
/// otherwise. It reads the same from both sides.
/// </param>
public sealed record MirrorChoice(MirrorWay Way, Middle Middle, BitGrid Figure);

/// <summary>Finds how the pattern ends can mirror each other left to right.</summary>
public static class Mirroring
{
    /// <summary>
    /// For every offset that can mirror the fewest balance ends that do it, by offset; empty when none can. It holds
    /// for any number of repeats. The time grows with the number of cells.
    /// </summary>
    public static Sequence<MirrorWay> EveryOffset(BitGrid motif)
    {
        ArgumentNullException.ThrowIfNull(motif);
        var width = motif.Columns;
        var axes = Borders.Axes(ThreadNames.OfEnds(motif));
        if (axes.Count == 0)
        {
            return [];
        }

        // b balance ends at an offset o put the axis at 2 o + b - 1: b is the way from 2 o - 1 to the next axis
        var toNext = new int[width];
        var next = axes[0] + width;
        for (var at = width - 1; at >= 0; at--)
        {
            next = axes.Count > 0 && axes[^1] == at ? at : next;
            if (next == at)
            {
                axes.RemoveAt(axes.Count - 1);
            }

            toNext[at] = next - at;
        }

        return Enumerable.Range(0, width).Select(offset => new MirrorWay(offset, toNext[Modulo((2 * offset) - 1, width)])).ToSequence();
    }

    /// <summary>The ways with the fewest balance ends of all; each puts another figure in the middle. Empty when none can mirror.</summary>
    public static Sequence<MirrorWay> Fewest(BitGrid motif)
    {
        var all = EveryOffset(motif);
        if (all.Count == 0)
        {
            return all;
        }

        var fewest = all.Min(way => way.Balance);
        return all.Where(way => way.Balance == fewest).ToSequence();
    }

    /// <summary>The ways with the fewest balance ends, by offset, each with the figure that it puts in the middle of so many repeats.</summary>
    public static Sequence<MirrorChoice> Choices(BitGrid motif, int repeats) => Fewest(motif).Select(way => ChoiceOf(motif, repeats, way)).ToSequence();

    /// <summary>A way to mirror with the figure that it puts in the middle of so many repeats.</summary>
    internal static MirrorChoice ChoiceOf(BitGrid motif, int repeats, MirrorWay way)
    {
        var middle = MiddleOf(motif, new WidthPlan(repeats, way.Offset, way.Balance, null));
        return new MirrorChoice(way, middle, Figure(motif, middle));
    }

    /// <summary>Where in the motif the middle of the pattern ends lies.</summary>
    public static Middle MiddleOf(BitGrid motif, WidthPlan width)
    {
        ArgumentNullException.ThrowIfNull(motif);
        ArgumentNullException.ThrowIfNull(width);
        var last = (motif.Columns * width.Repeats) + width.Balance - 1;
        return new Middle(((2 * width.Offset) + last) % (2 * motif.Columns));
    }

    /// <summary>Whether the pattern ends of a piece mirror each other in every row of its motif.</summary>
    public static bool IsMirrored(BitGrid motif, WidthPlan width)
    {
        var axis = MiddleOf(motif, width).Halves % motif.Columns;
        var byEnd = motif.Transpose();
        for (var end = 0; end < byEnd.Rows; end++)
        {
            if (!byEnd.RowWords(end).SequenceEqual(byEnd.RowWords(Modulo(axis - end, byEnd.Rows))))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>
    /// Whether every row of a piece does the same from the left as from the right, floating ends and plain rows included: with an even number of
    /// ends a plain row begins and ends differently.
    /// </summary>
    public static bool IsMirrored(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        for (var reading = 0; reading < piece.Keys.Count; reading++)
        {
            var words = piece.Cells.RowWords(reading);
            for (int left = 0, right = piece.Ends - 1; left < right; left++, right--)
            {
                if (((words[left >> 6] >> (left & 63)) & 1) != ((words[right >> 6] >> (right & 63)) & 1))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static BitGrid Figure(BitGrid motif, Middle middle)
    {
        var half = middle.IsOnThread ? motif.Columns / 2 : (motif.Columns + 1) / 2;
        var first = middle.IsOnThread ? middle.Thread - half : middle.Thread + 1 - half;
        return BitGrid.Create(
            motif.Rows,
            (2 * half) + (middle.IsOnThread ? 1 : 0),
            (row, end) => motif[row, Modulo(first + end, motif.Columns)]);
    }

    private static int Modulo(int value, int by) => ((value % by) + by) % by;
}
