namespace PatternShop.Weave;

/// <summary>
/// Finds the row plan with the fewest written items for a full list of rows. An item is a step (chart rows up or down, plain rows, an
/// edge stitch); a repeat adds one. Repeats do not stand in repeats.
/// </summary>
public static class RowFolding
{
    /// <summary>
    /// The steps with the fewest items that weave the same rows and stitches in the same order; among equals the fewest steps outside
    /// repeats. Of more than 14,000 rows, repeats of more rows than 100,000,000 ÷ their number are not looked for.
    /// </summary>
    /// <param name="order">Rows and stitches in the order of work.</param>
    public static Sequence<RowStep> Fold(IEnumerable<RowStep> order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var rows = Unroll(order);
        var reach = new int[rows.Count];
        for (var at = rows.Count - 1; at >= 0; at--)
        {
            reach[at] = at + 1 == rows.Count ? at + 1 : ReachOf(rows, at, reach[at + 1]);
        }

        return LevelFolding.Fold(Names(rows), reach).Select(part => part.Times == 1
            ? (RowStep)Step(rows, part.First, part.Length)
            : new Repeat(part.Times, Steps(rows, reach, part.First, part.First + part.Length))).ToSequence();
    }

    /// <summary>Every row and stitch by itself, in the order in which steps weave them.</summary>
    public static Sequence<SimpleStep> Unroll(IEnumerable<RowStep> steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        return steps.SelectMany(step => step is Repeat repeat
            ? Enumerable.Repeat(repeat.Steps.SelectMany(Single).ToList(), repeat.Times).SelectMany(once => once)
            : Single((SimpleStep)step)).ToSequence();
    }

    /// <summary>Number of written items.</summary>
    public static int Items(IEnumerable<RowStep> steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        return steps.Sum(step => step is Repeat repeat ? repeat.Steps.Count + 1 : 1);
    }

    private static IEnumerable<SimpleStep> Single(SimpleStep step)
    {
        switch (step)
        {
            case ChartRows chart:
                var stride = chart.First <= chart.Last ? 1 : -1;
                return Enumerable.Range(0, chart.Count).Select(i => chart with { First = chart.First + (i * stride), Last = chart.First + (i * stride) });
            case PlainRows plain:
                return Enumerable.Repeat(plain with { Count = 1 }, plain.Count);
            default:
                return [step];
        }
    }

    private static int[] Names(Sequence<SimpleStep> rows)
    {
        var names = new Dictionary<SimpleStep, int>();
        return [.. rows.Select(row => names.TryAdd(row, names.Count) ? names.Count - 1 : names[row])];
    }

    // Where the step that begins with a row ends, from where the one that begins with the next row does.
    private static int ReachOf(Sequence<SimpleStep> rows, int at, int next)
    {
        var stride = Stride(rows[at], rows[at + 1]);
        if (stride is null)
        {
            return at + 1;
        }

        return at + 2 < rows.Count && Stride(rows[at + 1], rows[at + 2]) == stride ? next : at + 2;
    }

    // How one row follows another in one step: up or down by one chart row, or 0 for plain rows; null when they cannot share a step.
    private static int? Stride(SimpleStep row, SimpleStep next) => (row, next) switch
    {
        (ChartRows a, ChartRows b) when a.Weft == b.Weft && Math.Abs(b.First - a.First) == 1 => b.First - a.First,
        (PlainRows a, PlainRows b) when a.Weft == b.Weft => 0,
        _ => null,
    };

    private static Sequence<SimpleStep> Steps(Sequence<SimpleStep> rows, int[] reach, int first, int end)
    {
        var steps = new List<SimpleStep>();
        for (var at = first; at < end; at = reach[at])
        {
            steps.Add(Step(rows, at, Math.Min(reach[at], end) - at));
        }

        return steps.ToSequence();
    }

    private static SimpleStep Step(Sequence<SimpleStep> rows, int first, int count) => rows[first] switch
    {
        ChartRows chart => chart with { Last = ((ChartRows)rows[first + count - 1]).Last },
        PlainRows plain => plain with { Count = count },
        var stitch => stitch,
    };
}
