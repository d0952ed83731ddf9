using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Rectangles that stand in rows of cells, as those of a chart do: from the top down, each as wide as some cells and at the edge of one.</summary>
/// <param name="Unit">Side of a cell in millimetres.</param>
/// <param name="Left">The leftmost edge, relative to the mark.</param>
/// <param name="Top">The top edge of the first row, relative to the mark.</param>
internal sealed record CellRows(double Unit, double Left, double Top)
{
    /// <summary>Millimetres that are no difference.</summary>
    public const double Exactness = 1e-6;

    // Fewer are not worth it.
    private const int Fewest = 16;

    // The part of a cell by which an edge may be off: it is written to a thousandth.
    private const double Rounding = 1e-4;

    /// <summary>The rows of an area; null where it is anything else.</summary>
    public static CellRows? Of(AreaMark area)
    {
        if (area.Outlines.Count < Fewest)
        {
            return null;
        }

        var (unit, left, above) = (double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity);
        foreach (var outline in area.Outlines)
        {
            if (!IsUpright(outline) || outline[0].Y < above - Exactness)
            {
                return null;
            }

            unit = Math.Min(unit, outline[1].X - outline[0].X);
            left = Math.Min(left, outline[0].X);
            above = outline[0].Y;
        }

        foreach (var outline in area.Outlines)
        {
            if (!IsWhole((outline[0].X - left) / unit) || !IsWhole((outline[1].X - left) / unit))
            {
                return null;
            }
        }

        return new CellRows(unit, left, area.Outlines[0][0].Y);
    }

    /// <summary>Whether an outline is an upright rectangle, from its top left corner clockwise.</summary>
    public static bool IsUpright(Sequence<Spot> outline) =>
        outline.Count == 4 && outline[0].Y == outline[1].Y && outline[1].X == outline[2].X && outline[2].Y == outline[3].Y && outline[3].X == outline[0].X
        && outline[1].X > outline[0].X && outline[2].Y > outline[1].Y;

    private static bool IsWhole(double cells) => Math.Abs(cells - Math.Round(cells)) < Rounding;
}
