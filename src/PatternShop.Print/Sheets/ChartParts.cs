using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Cuts a chart into parts that fit a sheet.</summary>
internal static class ChartParts
{
    /// <summary>As few parts as there can be, nearly equal; the lowest rows first, from left to right.</summary>
    public static Sequence<ChartWindow> Of(Piece piece, double cell, double width, double height, Wording wording)
    {
        var whole = ChartWindow.Whole(piece);
        var columns = Most(whole.Columns, count => Fits(piece, new ChartWindow(0, whole.Rows, whole.Columns - count, count), cell, width, double.PositiveInfinity, wording));
        var rows = Most(whole.Rows, count => Slices(whole.Rows, count).All(slice =>
            Fits(piece, new ChartWindow(slice.First, slice.Count, whole.Columns - 1, 1), cell, double.PositiveInfinity, height, wording)));
        return Slices(whole.Rows, rows)
            .SelectMany(r => Slices(whole.Columns, columns).Select(c => new ChartWindow(r.First, r.Count, c.First, c.Count)))
            .ToSequence();
    }

    private static IEnumerable<(int First, int Count)> Slices(int total, int most)
    {
        var parts = (total + most - 1) / most;
        return Enumerable.Range(0, parts).Select(i =>
        {
            var first = (int)((long)total * i / parts);
            return (first, (int)((long)total * (i + 1) / parts) - first);
        });
    }

    private static bool Fits(Piece piece, ChartWindow window, double cell, double width, double height, Wording wording)
    {
        var layout = new ChartLayout(piece, window, cell, true, wording);
        return layout.Width <= width && layout.Height <= height;
    }

    // The largest count that fits, at least 1; whatever fits fits in smaller counts too.
    private static int Most(int total, Func<int, bool> fits)
    {
        var (low, high) = (1, total);
        while (low < high)
        {
            var middle = low + ((high - low + 1) / 2);
            (low, high) = fits(middle) ? (middle, high) : (low, middle - 1);
        }

        return low;
    }
}
