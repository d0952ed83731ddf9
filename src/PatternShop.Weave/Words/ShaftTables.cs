namespace PatternShop.Weave;

/// <summary>A line of a table with a head.</summary>
public sealed record HeadedLine(string Head, string Text);

/// <summary>
/// A shaft plan as three tables of words: the shafts of the ends in order, the shafts that each lift raises, the lifts of the rows in
/// order. What comes back at once is written once and then said to come back.
/// </summary>
public sealed record ShaftTables(Sequence<HeadedLine> Ends, Sequence<HeadedLine> TieUp, Sequence<HeadedLine> Rows)
{
    // as many numbers as are read without losing the place
    private const int InALine = 12;

    /// <summary>The three tables in the order in which they are used, each with its title and the heads of its columns.</summary>
    public IEnumerable<(string Title, HeadedLine Heads, Sequence<HeadedLine> Lines)> All(Wording wording)
    {
        ArgumentNullException.ThrowIfNull(wording);
        return
        [
            (wording.EndOrderTitle, new HeadedLine(wording.EndsColumn, wording.ShaftsColumn), Ends),
            (wording.TieUpTitle, new HeadedLine(wording.LiftColumn, wording.RaisesColumn), TieUp),
            (wording.LiftsTitle, new HeadedLine(wording.RowsColumn, wording.LiftsColumn), Rows),
        ];
    }

    /// <summary>The tables of a piece's plan.</summary>
    public static ShaftTables Of(Piece piece, ShaftPlan plan, Wording wording)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(wording);
        return new ShaftTables(
            Lines(plan.EndOrder.AsSpan(), 1, wording, wording.AsEnds).ToSequence(),
            plan.TieUp.Select((shafts, i) => new HeadedLine(wording.Number(i + 1), shafts.Count == 0 ? wording.NoShaft : Numbers(shafts, wording))).ToSequence(),
            piece.Bands.SelectMany(band => Lines(plan.RowLifts.AsSpan().Slice(band.FirstRow - 1, band.Rows), band.FirstRow, wording, wording.AsRows)).ToSequence());
    }

    private static List<HeadedLine> Lines(ReadOnlySpan<int> numbers, int first, Wording wording, Func<int, int, int, string> again)
    {
        var lines = new List<HeadedLine>();
        var period = Periods.Of(numbers).Partial;
        var times = numbers.Length / period;
        var once = times > 1 ? period : numbers.Length;
        Add(lines, numbers[..once], first, wording);
        if (times > 1)
        {
            lines.Add(new HeadedLine(
                wording.FromTo(first + period, first + (period * times) - 1),
                again(first, first + period - 1, times - 1)));
            Add(lines, numbers[(period * times)..], first + (period * times), wording);
        }

        return lines;
    }

    private static void Add(List<HeadedLine> lines, ReadOnlySpan<int> numbers, int first, Wording wording)
    {
        for (var at = 0; at < numbers.Length; at += InALine)
        {
            var part = numbers.Slice(at, Math.Min(InALine, numbers.Length - at));
            lines.Add(new HeadedLine(wording.FromTo(first + at, first + at + part.Length - 1), Numbers(part.ToArray(), wording)));
        }
    }

    private static string Numbers(IEnumerable<int> numbers, Wording wording) => string.Join(", ", numbers.Select(wording.Number));
}
