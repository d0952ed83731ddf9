using PdfSharp.Drawing;

namespace PatternShop.Print;

/// <summary>Where the figures and links of a page stand, in points from the bottom left corner, as readers of tagged files want to know.</summary>
internal static class FigureBounds
{
    private const double PointsPerMillimetre = 72 / 25.4;

    public static IReadOnlyDictionary<Tag, XRect> Of(PagePlan plan, Paper paper)
    {
        var bounds = new Dictionary<Tag, XRect>();
        foreach (var item in plan.Items)
        {
            if (item.Tag?.Path.FirstOrDefault(tag => tag.Kind is TagKind.Figure or TagKind.Link) is { } figure)
            {
                var painted = Around(item.Mark, paper);
                bounds[figure] = bounds.TryGetValue(figure, out var known) ? XRect.Union(known, painted) : painted;
            }
        }

        return bounds;
    }

    private static XRect Around(Mark mark, Paper paper)
    {
        var (left, top, right, bottom) = mark.Extent;
        return new XRect(
            new XPoint((mark.X + left) * PointsPerMillimetre, (paper.Height - mark.Y - bottom) * PointsPerMillimetre),
            new XPoint((mark.X + right) * PointsPerMillimetre, (paper.Height - mark.Y - top) * PointsPerMillimetre));
    }
}
