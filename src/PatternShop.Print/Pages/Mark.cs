using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>A place on a page: millimetres from the left and from the top.</summary>
internal readonly record struct Spot(double X, double Y);

/// <summary>Something painted on a page.</summary>
/// <param name="X">Millimetres from the left.</param>
/// <param name="Y">Millimetres from the top.</param>
internal abstract record Mark(double X, double Y)
{
    /// <summary>Left, top, right and bottom of what is painted, relative to (X, Y).</summary>
    public abstract (double Left, double Top, double Right, double Bottom) Extent { get; }

    public Mark Moved(double x, double y) => this with { X = X + x, Y = Y + y };
}

/// <summary>Words on one line in one font; (X, Y) is the left end of the baseline.</summary>
internal sealed record TextMark(double X, double Y, TextPiece Piece, TextStyle Style) : Mark(X, Y)
{
    public override (double Left, double Top, double Right, double Bottom) Extent =>
        (0, -0.8 * Style.Em, Piece.Width(Style), 0.25 * Style.Em);
}

/// <summary>Closed outlines, filled; their points are relative to (X, Y).</summary>
internal sealed record AreaMark(double X, double Y, Sequence<Sequence<Spot>> Outlines, double Grey) : Mark(X, Y)
{
    /// <summary>A colour, which goes before the grey; null for the grey.</summary>
    public Rgb? Colour { get; init; }

    public override (double Left, double Top, double Right, double Bottom) Extent => Spots.Extent(Outlines, 0);
}

/// <summary>Lines through points that are relative to (X, Y); width and points in millimetres.</summary>
internal sealed record StrokeMark(double X, double Y, Sequence<Sequence<Spot>> Lines, bool Closed, double Width, double Grey) : Mark(X, Y)
{
    public override (double Left, double Top, double Right, double Bottom) Extent => Spots.Extent(Lines, Width / 2);
}

/// <summary>A mark and what it is to somebody who cannot see it; without a tag it is decoration.</summary>
internal sealed record Placed(Mark Mark, Tag? Tag)
{
    public Placed Moved(double x, double y) => this with { Mark = Mark.Moved(x, y) };
}

internal static class Spots
{
    public static (double Left, double Top, double Right, double Bottom) Extent(Sequence<Sequence<Spot>> lines, double around)
    {
        var (left, top, right, bottom) = (double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);
        foreach (var line in lines)
        {
            foreach (var spot in line)
            {
                (left, top) = (Math.Min(left, spot.X), Math.Min(top, spot.Y));
                (right, bottom) = (Math.Max(right, spot.X), Math.Max(bottom, spot.Y));
            }
        }

        return (left - around, top - around, right + around, bottom + around);
    }
}
