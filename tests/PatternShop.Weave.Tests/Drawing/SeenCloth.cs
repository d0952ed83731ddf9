namespace PatternShop.Weave.Tests;

/// <summary>What is seen at a place of a picture of the cloth: the shape that was painted last there.</summary>
internal sealed class SeenCloth(Drawing drawing, int ends, int rows)
{
    // by the column or the row in which they lie, those painted last first
    private readonly ILookup<(bool IsWeft, int Lane), (Shape Shape, int Order)> _strips = drawing.Shapes
        .Select((shape, order) => (Shape: shape, Order: order))
        .Where(one => one.Shape is Strip)
        .Reverse()
        .ToLookup(one => Lane((Strip)one.Shape, drawing, ends, rows));

    public double End => drawing.Width / ends;

    public double Row => drawing.Height / rows;

    /// <summary>What is seen at a place, in pitches of ends from the left and of rows from the bottom: the middle of row 1 at the first end is (0.5, 0.5).</summary>
    public Shape At(double end, double row)
    {
        var (x, y) = (end * End, drawing.Height - (row * Row));
        return _strips[(true, (int)(y / Row))].Concat(_strips[(false, (int)(x / End))])
            .Where(one => Holds(one.Shape, x, y))
            .Append((Shape: drawing.Shapes.OfType<Box>().Last(box => Holds(box, x, y)), Order: -1))
            .MaxBy(one => one.Order)
            .Shape;
    }

    private static (bool IsWeft, int Lane) Lane(Strip strip, Drawing drawing, int ends, int rows) =>
        IsWeft(strip) ? (true, (int)(strip.Y1 / drawing.Height * rows)) : (false, (int)(strip.X1 / drawing.Width * ends));

    /// <summary>The strip that is seen in the middle of a crossing, ends from 0 at the left, rows from 0 at the bottom.</summary>
    public Strip Crossing(int end, int row) => (Strip)At(end + 0.5, row + 0.5);

    /// <summary>Whether the strip lies across, as the weft does.</summary>
    public static bool IsWeft(Strip strip) => strip.Y1 == strip.Y2;

    private static bool Holds(Shape shape, double x, double y) => shape switch
    {
        Box box => x >= box.X && x <= box.X + box.Width && y >= box.Y && y <= box.Y + box.Height,
        Strip s when IsWeft(s) => x >= s.X1 && x <= s.X2 && Math.Abs(y - s.Y1) <= s.Thickness / 2,
        Strip s => y >= s.Y1 && y <= s.Y2 && Math.Abs(x - s.X1) <= s.Thickness / 2,
        _ => throw new InvalidOperationException(shape.GetType().Name),
    };
}
