namespace PatternShop.Weave;

/// <summary>After how many threads a list of threads repeats itself.</summary>
/// <param name="Partial">The smallest number after which every thread is followed by its like as far as there are threads; the last time may be cut.</param>
/// <param name="Whole">The smallest such number that goes into the length without a rest; the length itself where nothing repeats.</param>
public readonly record struct Period(int Partial, int Whole);

/// <summary>
/// Finds the smallest periods by the border function: the partial one is the length less the longest border, the whole one is the
/// same where it divides the length (were there a smaller divisor, the two would share a still smaller period).
/// </summary>
public static class Periods
{
    /// <summary>The smallest periods across: of ends.</summary>
    public static Period Across(BitGrid motif)
    {
        ArgumentNullException.ThrowIfNull(motif);
        return Of(ThreadNames.OfEnds(motif));
    }

    /// <summary>The smallest periods along: of rows.</summary>
    public static Period Along(BitGrid motif)
    {
        ArgumentNullException.ThrowIfNull(motif);
        return Of(ThreadNames.OfRows(motif));
    }

    /// <summary>The smallest periods of a list of at least one item.</summary>
    public static Period Of(ReadOnlySpan<int> items)
    {
        if (items.IsEmpty)
        {
            throw new ArgumentException("A list without items has no period.", nameof(items));
        }

        var partial = items.Length - Borders.Of(items)[items.Length];
        return new Period(partial, items.Length % partial == 0 ? partial : items.Length);
    }
}
