using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>A block and the space above it, which falls away at the top of a page.</summary>
internal sealed record Stacked(double Above, Block Block);

/// <summary>Blocks one under the other.</summary>
internal sealed record Stack(Sequence<Stacked> Parts) : Block
{
    public override Fit Fit(double width, double height, bool fresh)
    {
        var items = new List<Items>();
        var atTop = true;
        var used = 0.0;
        for (var i = 0; i < Parts.Count; i++)
        {
            var above = atTop ? 0 : Parts[i].Above;
            var fit = Parts[i].Block.Fit(width, height - used - above, fresh && atTop);
            items.Add(fit.Items.Moved(0, used + above));
            used += fit.IsNothing ? 0 : above + fit.Height;
            atTop &= fit.Items.IsEmpty;
            if (fit.Rest is { } rest)
            {
                return new Fit(Items.Joined(items.ToSequence()), used, new Stack([new Stacked(Parts[i].Above, rest), .. Parts.Skip(i + 1)]));
            }
        }

        return new Fit(Items.Joined(items.ToSequence()), used, null);
    }
}
