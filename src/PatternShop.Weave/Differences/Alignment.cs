namespace PatternShop.Weave;

/// <summary>One step of an alignment: an item of the old list, of the new list, or of both. Indices from 0.</summary>
public readonly record struct Pair(int? Old, int? New);

/// <summary>Lays two lists beside each other with the least change.</summary>
public static class Alignment
{
    /// <summary>What an inserted or a removed item costs.</summary>
    public const int Whole = 1000;

    /// <summary>
    /// The cheapest alignment: every item of both lists in order, paired where pairing is cheaper than removing one and inserting the
    /// other. Takes time and memory in the order of old × new after equal beginnings and ends are set aside.
    /// </summary>
    /// <param name="old">Number of old items.</param>
    /// <param name="new">Number of new items.</param>
    /// <param name="cost">Cost of pairing old item i with new item j: 0 when equal, below 2 × <see cref="Whole"/>, or null where they may not be paired.</param>
    public static Sequence<Pair> Of(int old, int @new, Func<int, int, int?> cost)
    {
        ArgumentNullException.ThrowIfNull(cost);
        var head = 0;
        while (head < old && head < @new && cost(head, head) == 0)
        {
            head++;
        }

        var tail = 0;
        while (tail < old - head && tail < @new - head && cost(old - 1 - tail, @new - 1 - tail) == 0)
        {
            tail++;
        }

        var pairs = Enumerable.Range(0, head).Select(i => new Pair(i, i)).ToList();
        pairs.AddRange(Middle(old - head - tail, @new - head - tail, (i, j) => cost(head + i, head + j))
            .Select(pair => new Pair(pair.Old + head, pair.New + head)));
        pairs.AddRange(Enumerable.Range(1, tail).Select(i => new Pair(old - tail + i - 1, @new - tail + i - 1)));
        return pairs.ToSequence();
    }

    private static List<Pair> Middle(int old, int @new, Func<int, int, int?> cost)
    {
        var best = new long[old + 1, @new + 1];
        var paired = new bool[old + 1, @new + 1];
        for (var i = old; i >= 0; i--)
        {
            for (var j = @new; j >= 0; j--)
            {
                if (i == old || j == @new)
                {
                    best[i, j] = (long)Whole * (old - i + @new - j);
                    continue;
                }

                best[i, j] = Whole + Math.Min(best[i + 1, j], best[i, j + 1]);
                if (cost(i, j) is { } together && best[i + 1, j + 1] + together <= best[i, j])
                {
                    (best[i, j], paired[i, j]) = (best[i + 1, j + 1] + together, true);
                }
            }
        }

        return Trace(best, paired);
    }

    private static List<Pair> Trace(long[,] best, bool[,] paired)
    {
        var (old, @new) = (best.GetLength(0) - 1, best.GetLength(1) - 1);
        var pairs = new List<Pair>();
        for (int i = 0, j = 0; i < old || j < @new;)
        {
            if (paired[i, j])
            {
                pairs.Add(new Pair(i++, j++));
            }
            else if (j == @new || (i < old && best[i + 1, j] <= best[i, j + 1]))
            {
                pairs.Add(new Pair(i++, null));
            }
            else
            {
                pairs.Add(new Pair(null, j++));
            }
        }

        return pairs;
    }
}
