using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>What puts the sheets of a chart together: lines to cut along, lines to lay the next sheet to, and a key map.</summary>
internal static class SheetMarks
{
    /// <summary>Thickness of the marks that meet when sheets lie on each other, in millimetres; nothing else is as thick.</summary>
    public const double Thickness = 0.22;

    private const double Away = 0.5;
    private const double Length = 3;
    private const double Dash = 1.6;
    private const double MapCell = 4;
    private const double MapMost = 40;

    /// <summary>Marks at the edges of a part, relative to the top left corner of its drawing.</summary>
    public static IEnumerable<Placed> Edges(ChartPart part, ChartLayout layout)
    {
        if (part.Column > 0)
        {
            yield return Ticks(Upright(layout, layout.Left));
            yield return Dashes(new Spot(layout.Left, layout.Top - Length), new Spot(layout.Left, layout.Bottom + Length), 0);
        }

        if (part.Column < part.Columns - 1)
        {
            var x = layout.X(part.Window.FirstColumn + part.OwnColumns);
            yield return Ticks(Upright(layout, x));
            yield return Dashes(new Spot(x, layout.Top), new Spot(x, layout.Bottom), 0.35);
        }

        if (part.Row > 0)
        {
            yield return Ticks(Level(layout, layout.Bottom));
            yield return Dashes(new Spot(layout.Left - Length, layout.Bottom), new Spot(layout.Right + Length, layout.Bottom), 0);
        }

        if (part.Row < part.Rows - 1)
        {
            var y = layout.Y(part.OwnRows) + layout.Cell;
            yield return Ticks(Level(layout, y));
            yield return Dashes(new Spot(layout.Left, y), new Spot(layout.Right, y), 0.35);
        }
    }

    /// <summary>The sheets as small boxes, this one filled; a drawing with its top left corner at (0, 0).</summary>
    public static (Sequence<Placed> Items, double Width, double Height) Map(ChartPart part)
    {
        var side = Math.Min(MapCell, MapMost / Math.Max(part.Columns, part.Rows));
        Sequence<Spot> Box(int column, int row) =>
        [
            new(column * side, (part.Rows - 1 - row) * side),
            new((column + 1) * side, (part.Rows - 1 - row) * side),
            new((column + 1) * side, (part.Rows - row) * side),
            new(column * side, (part.Rows - row) * side),
        ];
        var all = Enumerable.Range(0, part.Of).Select(i => Box(i % part.Columns, i / part.Columns)).ToSequence();
        return ([new Placed(new AreaMark(0, 0, [Box(part.Column, part.Row)], 0.2), null), new Placed(new StrokeMark(0, 0, all, true, 0.15, 0.3), null)], part.Columns * side, part.Rows * side);
    }

    private static Sequence<Sequence<Spot>> Upright(ChartLayout layout, double x) =>
    [
        [new(x, layout.Top - Away - Length), new(x, layout.Top - Away)],
        [new(x, layout.Bottom + Away), new(x, layout.Bottom + Away + Length)],
    ];

    private static Sequence<Sequence<Spot>> Level(ChartLayout layout, double y) =>
    [
        [new(layout.Left - Away - Length, y), new(layout.Left - Away, y)],
        [new(layout.Right + Away, y), new(layout.Right + Away + Length, y)],
    ];

    private static Placed Ticks(Sequence<Sequence<Spot>> lines) => new(new StrokeMark(0, 0, lines, false, Thickness, 0), null);

    /// <summary>A dashed line as its dashes.</summary>
    public static Sequence<Sequence<Spot>> DashesOf(Spot from, Spot to)
    {
        var length = Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y));
        var (x, y) = ((to.X - from.X) / length, (to.Y - from.Y) / length);
        return Enumerable.Range(0, (int)Math.Ceiling(length / (2 * Dash)))
            .Select(i => (Start: i * 2 * Dash, End: Math.Min(length, ((i * 2) + 1) * Dash)))
            .Select(d => Sequence.Of<Spot>([new Spot(from.X + (d.Start * x), from.Y + (d.Start * y)), new Spot(from.X + (d.End * x), from.Y + (d.End * y))]))
            .ToSequence();
    }

    private static Placed Dashes(Spot from, Spot to, double grey) => new(new StrokeMark(0, 0, DashesOf(from, to), false, 0.25, grey), null);
}
