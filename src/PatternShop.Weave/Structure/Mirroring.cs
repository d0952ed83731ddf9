namespace PatternShop.Weave;

/// <summary>One way to make the pattern ends mirror left to right.</summary>
/// <param name="Offset">The offset, from 0.</param>
/// <param name="Balance">Balance ends that it takes.</param>
public readonly record struct MirrorWay(int Offset, int Balance);

/// <summary>Finds how the pattern ends can mirror each other left to right.</summary>
public static class Mirroring
{
    /// <summary>
    /// For every offset that can mirror the fewest balance ends that do it, by offset; empty when none can. It holds
    /// for any number of repeats.
    /// </summary>
    public static Sequence<MirrorWay> EveryOffset(BitGrid motif)
    {
        ArgumentNullException.ThrowIfNull(motif);
        var width = motif.Columns;
        var axes = Axes(motif);
        return Enumerable.Range(0, width)
            .SelectMany(offset => axes
                .Select(axis => new MirrorWay(offset, Modulo(axis + 1 - (2 * offset), width)))
                .OrderBy(way => way.Balance)
                .Take(1))
            .ToSequence();
    }

    /// <summary>The ways with the fewest balance ends of all; each puts another figure in the middle. Empty when none can mirror.</summary>
    public static Sequence<MirrorWay> Fewest(BitGrid motif)
    {
        var all = EveryOffset(motif);
        return all.Count == 0 ? all : all.Where(way => way.Balance == all.Min(other => other.Balance)).ToSequence();
    }

    /// <summary>Whether the pattern ends of a piece mirror each other in every row of its motif.</summary>
    public static bool IsMirrored(BitGrid motif, WidthPlan width)
    {
        ArgumentNullException.ThrowIfNull(motif);
        ArgumentNullException.ThrowIfNull(width);
        var axis = Modulo((2 * width.Offset) + (motif.Columns * width.Repeats) + width.Balance - 1, motif.Columns);
        return IsAxis(motif.Transpose(), axis);
    }

    // s is an axis when end e and end s - e (modulo the width) are alike in every row.
    private static List<int> Axes(BitGrid motif)
    {
        var byEnd = motif.Transpose();
        return Enumerable.Range(0, motif.Columns).Where(axis => IsAxis(byEnd, axis)).ToList();
    }

    private static bool IsAxis(BitGrid byEnd, int axis)
    {
        for (var end = 0; end < byEnd.Rows; end++)
        {
            if (!byEnd.RowWords(end).SequenceEqual(byEnd.RowWords(Modulo(axis - end, byEnd.Rows))))
            {
                return false;
            }
        }

        return true;
    }

    private static int Modulo(int value, int by) => ((value % by) + by) % by;
}
