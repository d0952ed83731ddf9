using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Room on a sheet in millimetres.</summary>
internal readonly record struct Room(double Width, double Height);

/// <summary>What one of several sheets shows of a chart.</summary>
/// <param name="Window">The rows and ends that are drawn, with those at the top and at the right that the next sheets show again.</param>
/// <param name="OwnRows">Rows that are its own, from the lowest.</param>
/// <param name="OwnColumns">Ends that are its own, from the left.</param>
/// <param name="Column">Which sheet from the left, from 0.</param>
/// <param name="Row">Which sheet from below, from 0.</param>
/// <param name="Columns">Sheets side by side.</param>
/// <param name="Rows">Sheets one above the other.</param>
internal sealed record ChartPart(ChartWindow Window, int OwnRows, int OwnColumns, int Column, int Row, int Columns, int Rows)
{
    /// <summary>Its number among the sheets, from 1; the lowest row of sheets first, from left to right.</summary>
    public int Number => (Row * Columns) + Column + 1;

    public int Of => Rows * Columns;
}

/// <summary>Cuts a chart into parts that fit a sheet.</summary>
internal static class ChartParts
{
    /// <summary>Rows and ends that neighbouring sheets both show, so that one can be laid on the other.</summary>
    public const int Overlap = 2;

    /// <summary>As few parts as there can be, nearly equal; the lowest rows first, from left to right.</summary>
    public static Sequence<ChartPart> Of(Piece piece, double cell, Room room, Wording wording, ChartLook look)
    {
        var whole = ChartWindow.Whole(piece);
        var rows = Slices(whole.Rows, Most(whole.Rows, count => Slices(whole.Rows, count).All(slice =>
            Fits(piece, new ChartWindow(slice.First, slice.Shown, whole.Columns - 1, 1), cell, room with { Width = double.PositiveInfinity }, wording, look))));
        // the words at a bracket stand side by side where a slice shows few rows of it, and take more room then
        var columns = Slices(whole.Columns, Most(whole.Columns, count => rows.All(slice =>
            Fits(piece, new ChartWindow(slice.First, slice.Shown, whole.Columns - count, count), cell, room with { Height = double.PositiveInfinity }, wording, look))));
        return rows
            .SelectMany((r, row) => columns.Select((c, column) =>
                new ChartPart(new ChartWindow(r.First, r.Shown, c.First, c.Shown), r.Own, c.Own, column, row, columns.Count, rows.Count)))
            .ToSequence();
    }

    // No slice shows more than the most.
    private static List<(int First, int Own, int Shown)> Slices(int total, int most)
    {
        var overlap = Math.Min(Overlap, most - 1);
        var parts = most >= total ? 1 : (total + most - overlap - 1) / (most - overlap);
        return [.. Enumerable.Range(0, parts).Select(i =>
        {
            var first = (int)((long)total * i / parts);
            var own = (int)((long)total * (i + 1) / parts) - first;
            return (first, own, Math.Min(own + overlap, total - first));
        })];
    }

    private static bool Fits(Piece piece, ChartWindow window, double cell, Room room, Wording wording, ChartLook look)
    {
        var layout = new ChartLayout(piece, window, cell, true, wording, look);
        return layout.Width <= room.Width && layout.Height <= room.Height;
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
