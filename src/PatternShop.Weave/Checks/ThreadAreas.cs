namespace PatternShop.Weave;

/// <summary>Whole threads as areas.</summary>
internal static class ThreadAreas
{
    /// <summary>Rows of the motif (from 0) over all its ends; neighbours are joined.</summary>
    public static IEnumerable<Area> MotifRows(BitGrid motif, IEnumerable<int> rows) =>
        Stretches(rows).Select(rows => new Area(AreaOf.Motif, rows.First + 1, rows.Last + 1, 0, motif.Columns - 1));

    /// <summary>Ends of the motif (from 0) through all its rows.</summary>
    public static IEnumerable<Area> MotifEnds(BitGrid motif, IEnumerable<int> ends) =>
        Stretches(ends).Select(ends => new Area(AreaOf.Motif, 1, motif.Rows, ends.First, ends.Last));

    /// <summary>Columns of the piece (from 0) through all its rows.</summary>
    public static IEnumerable<Area> Columns(Piece piece, IEnumerable<int> columns) =>
        Stretches(columns).Select(columns => new Area(AreaOf.Piece, 1, piece.Rows.Count, columns.First, columns.Last));

    /// <summary>The first areas that a finding may name.</summary>
    public static Sequence<Area> Bounded(this IEnumerable<Area> areas) => areas.Take(Finding.MostAreas).ToSequence();

    // ascending numbers, neighbours together
    private static IEnumerable<(int First, int Last)> Stretches(IEnumerable<int> numbers)
    {
        (int First, int Last)? open = null;
        foreach (var number in numbers)
        {
            if (open is { } stretch && stretch.Last + 1 == number)
            {
                open = (stretch.First, number);
                continue;
            }

            if (open is { } done)
            {
                yield return done;
            }

            open = (number, number);
        }

        if (open is { } last)
        {
            yield return last;
        }
    }
}
