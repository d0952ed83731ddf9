using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>A block and the space above it, which falls away at the top of a page.</summary>
internal sealed record Stacked(double Above, Block Block);

/// <summary>Blocks one under the other.</summary>
internal sealed record Stack(Sequence<Stacked> Parts) : Block
{
    public override Fit Fit(double width, double height, bool fresh)
    {
        var items = new List<Placed>();
        var used = 0.0;
        for (var i = 0; i < Parts.Count; i++)
        {
            var atTop = items.Count == 0;
            var above = atTop ? 0 : Parts[i].Above;
            var fit = Parts[i].Block.Fit(width, height - used - above, fresh && atTop);
            items.AddRange(fit.Items.Select(item => item.Moved(0, used + above)));
            used += fit.IsNothing ? 0 : above + fit.Height;
            if (fit.Rest is { } rest)
            {
                return new Fit(items.ToSequence(), used, new Stack([new Stacked(Parts[i].Above, rest), .. Parts.Skip(i + 1)]));
            }
        }

        return new Fit(items.ToSequence(), used, null);
    }
}
