using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>
/// Characters that no font of ours has: arrows and boxes are drawn as what they are, anything else as an empty frame
/// that shows that something stands there. The file says which characters they stand for.
/// </summary>
internal static class DrawnCharacter
{
    /// <summary>Advance in ems.</summary>
    public const double Width = 1.0;

    // An arrow to the right in ems, its line at half the height of capitals; the other ways are turns of it.
    private static readonly Spot[] Arrow =
        [new(-0.42, -0.04), new(0.1, -0.04), new(0.1, -0.22), new(0.42, 0), new(0.1, 0.22), new(0.1, 0.04), new(-0.42, 0.04)];

    private static readonly Spot[] Frame = [new(-0.34, -0.34), new(0.34, -0.34), new(0.34, 0.34), new(-0.34, 0.34)];

    /// <summary>The drawing of a character whose baseline begins at (x, y).</summary>
    public static Mark Of(string character, double x, double y, TextStyle style)
    {
        var middle = new Spot(x + (Width / 2 * style.Em), y - (0.35 * style.Em));
        return character switch
        {
            "→" => Area(middle, style, Arrow),
            "←" => Area(middle, style, [.. Arrow.Select(p => new Spot(-p.X, p.Y))]),
            "↑" => Area(middle, style, [.. Arrow.Select(p => new Spot(p.Y, -p.X))]),
            "↓" => Area(middle, style, [.. Arrow.Select(p => new Spot(p.Y, p.X))]),
            _ => new StrokeMark(middle.X, middle.Y, [Scaled(Frame, style)], true, 0.06 * style.Em, style.Grey),
        };
    }

    private static AreaMark Area(Spot middle, TextStyle style, Spot[] outline) =>
        new(middle.X, middle.Y, [Scaled(outline, style)], style.Grey);

    private static Sequence<Spot> Scaled(Spot[] outline, TextStyle style) =>
        outline.Select(p => new Spot(p.X * style.Em, p.Y * style.Em)).ToSequence();
}
