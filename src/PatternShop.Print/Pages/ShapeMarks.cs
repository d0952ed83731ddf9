using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Turns the shapes of a drawing into marks: neighbours that are painted alike become one, labels come last.</summary>
internal static class ShapeMarks
{
    private const double PointsPerMillimetre = 72 / 25.4;

    /// <summary>The marks of a drawing whose top left corner is at (0, 0).</summary>
    public static IEnumerable<Mark> Of(Drawing drawing) => [.. Areas(drawing.Shapes), .. drawing.Shapes.OfType<Label>().SelectMany(TextOf)];

    private static IEnumerable<Mark> Areas(Sequence<Shape> shapes)
    {
        var like = new List<Shape>();
        foreach (var shape in shapes.Where(shape => shape is not Label))
        {
            if (like.Count > 0 && !Alike(like[0], shape))
            {
                yield return MarkOf(like);
                like.Clear();
            }

            like.Add(shape);
        }

        if (like.Count > 0)
        {
            yield return MarkOf(like);
        }
    }

    private static bool Alike(Shape a, Shape b) => (a, b) switch
    {
        (Line one, Line other) => one.Shade == other.Shade && one.Thickness == other.Thickness,
        (Strip one, Strip other) => one.Shade == other.Shade && one.Colour == other.Colour,
        (Line, _) or (_, Line) or (Strip, _) or (_, Strip) => false,
        _ => ShadeOf(a) == ShadeOf(b),
    };

    private static Mark MarkOf(List<Shape> like)
    {
        var outlines = like.Select(Outline).ToSequence();
        return like[0] is Line line
            ? new StrokeMark(0, 0, outlines, false, line.Thickness, Grey(line.Shade))
            : new AreaMark(0, 0, outlines, Grey(ShadeOf(like[0]))) { Colour = (like[0] as Strip)?.Colour };
    }

    private static Sequence<Spot> Outline(Shape shape) => shape switch
    {
        Line l => [new(l.X1, l.Y1), new(l.X2, l.Y2)],
        Box b => [new(b.X, b.Y), new(b.X + b.Width, b.Y), new(b.X + b.Width, b.Y + b.Height), new(b.X, b.Y + b.Height)],
        Strip s => Around(s),
        Triangle t => [new(t.X1, t.Y1), new(t.X2, t.Y2), new(t.X3, t.Y3)],
        _ => throw new InvalidOperationException($"No way to paint {shape.GetType().Name}."),
    };

    private static Sequence<Spot> Around(Strip strip)
    {
        var (across, down) = strip.X1 == strip.X2 ? (strip.Thickness / 2, 0d) : (0d, strip.Thickness / 2);
        return
        [
            new(strip.X1 - across, strip.Y1 - down), new(strip.X2 + across, strip.Y1 - down),
            new(strip.X2 + across, strip.Y2 + down), new(strip.X1 - across, strip.Y2 + down),
        ];
    }

    private static Shade ShadeOf(Shape shape) => shape switch
    {
        Box box => box.Shade,
        Triangle triangle => triangle.Shade,
        Line line => line.Shade,
        Strip strip => strip.Shade,
        _ => Shade.Black,
    };

    private static IEnumerable<Mark> TextOf(Label label)
    {
        var style = new TextStyle(label.Size * PointsPerMillimetre, label.Bold, Grey(label.Shade));
        var width = Lettering.Width(label.Text, style);
        var x = label.Anchor switch
        {
            TextAnchor.Start => label.X,
            TextAnchor.Middle => label.X - (width / 2),
            _ => label.X - width,
        };
        return TextLine.Set(label.Text, x, label.Y, style, null).Select(placed => placed.Mark);
    }

    /// <summary>How light a tone is: 0 is black.</summary>
    public static double Grey(Shade shade) => shade switch
    {
        Shade.White => 1,
        Shade.Light => 0.8,
        Shade.Middle => 0.35,
        Shade.Dark => 0.17,
        _ => 0,
    };
}
