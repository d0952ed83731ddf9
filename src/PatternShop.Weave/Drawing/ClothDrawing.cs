namespace PatternShop.Weave;

/// <summary>Which side of the cloth is seen.</summary>
public enum ClothSide
{
    /// <summary>The side towards the weaver.</summary>
    Face,

    /// <summary>The side away, the cloth turned over like a page.</summary>
    Back,
}

/// <summary>The room for a picture of the cloth. All measures in millimetres.</summary>
/// <param name="Width">The widest that it may be.</param>
/// <param name="Height">The highest that it may be.</param>
/// <param name="Thinnest">No thread gets less than this, gap included; of a piece that is too large for it a part is drawn.</param>
/// <param name="Thickest">No thread gets more: a small piece does not fill the room.</param>
public sealed record ClothRoom(double Width, double Height, double Thinnest, double Thickest)
{
    /// <summary>
    /// Whether the room is to be filled where threads may get that large: what does not fit is left out, and the last thread may stand out of
    /// the room. Otherwise the whole piece is shown where threads may get that small.
    /// </summary>
    public bool IsFilled { get; init; }
}

/// <summary>
/// The woven cloth as a flat crossing drawing: every thread a plain strip as wide as its thickness, as far from its neighbours as sett
/// and row density put it, and at every crossing the thread that lies on the side that is seen. Where no thread lies the ground shows.
/// </summary>
public static class ClothDrawing
{
    // thinner edges could not be told from the thread
    private const double LeastEdged = 1;
    private const double EdgePart = 0.07;

    /// <summary>The drawing of as much of a piece as fits; of a larger one the corner where row 1 begins at end 1.</summary>
    public static Drawing Of(Piece piece, ClothRoom room, ClothSide side = ClothSide.Face)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(room);
        var cloth = new ClothPlan(piece, room, side);
        var shapes = new List<Shape> { new Box(0, 0, cloth.Width, cloth.Height, Shade.White) };
        Add(shapes, cloth, Enumerable.Range(0, cloth.Ends).Select(end => Along(cloth, end, 0, cloth.Height)));
        Add(shapes, cloth, Enumerable.Range(0, cloth.Rows).Select(row => Across(cloth, row)));
        // up to the middle of the gaps, where the same end is seen anyway: no hair of weft shows at the seam
        Add(shapes, cloth, WarpStretches(cloth).Select(one => Along(cloth, one.End, one.Top * cloth.Row, (one.Bottom + 1) * cloth.Row)));
        return new Drawing(cloth.Width, cloth.Height, shapes.ToSequence());
    }

    /// <summary>Whether the drawing shows the whole piece.</summary>
    public static bool ShowsAll(Piece piece, ClothRoom room)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(room);
        var cloth = new ClothPlan(piece, room, ClothSide.Face);
        return cloth.Ends == piece.Ends && cloth.Rows == piece.Rows.Count;
    }

    private static Strip Along(ClothPlan cloth, int end, double top, double bottom)
    {
        var thread = cloth.Warp(end);
        return new Strip(thread.Middle, top, thread.Middle, bottom, thread.Thickness, Shade.Light, thread.Colour);
    }

    private static Strip Across(ClothPlan cloth, int row)
    {
        var thread = cloth.Weft(row);
        return new Strip(0, thread.Middle, cloth.Width, thread.Middle, thread.Thickness, Shade.Middle, thread.Colour);
    }

    // threads of one colour lie beside each other in the list, so that they become one path
    private static void Add(List<Shape> shapes, ClothPlan cloth, IEnumerable<Strip> threads)
    {
        var edged = Math.Min(cloth.End, cloth.Row) >= LeastEdged;
        foreach (var alike in threads.GroupBy(one => (one.Colour, one.Thickness, one.Shade)))
        {
            var (colour, thickness, shade) = alike.Key;
            if (edged)
            {
                shapes.AddRange(alike.Select(one => one with { Shade = shade == Shade.Light ? Shade.Middle : Shade.Dark, Colour = colour?.Darker(0.6) }));
                thickness *= 1 - (2 * EdgePart);
            }

            shapes.AddRange(alike.Select(one => one with { Thickness = thickness, Colour = colour }));
        }
    }

    // Stretches of neighbouring rows, counted from the top of the drawing, in which an end lies on the side that is seen.
    private static IEnumerable<(int End, int Top, int Bottom)> WarpStretches(ClothPlan cloth)
    {
        for (var end = 0; end < cloth.Ends; end++)
        {
            var start = -1;
            for (var row = 0; row <= cloth.Rows; row++)
            {
                var seen = row < cloth.Rows && !cloth.IsWeftSeen(row, end);
                if (seen && start < 0)
                {
                    start = row;
                }
                else if (!seen && start >= 0)
                {
                    yield return (end, start, row - 1);
                    start = -1;
                }
            }
        }
    }
}
