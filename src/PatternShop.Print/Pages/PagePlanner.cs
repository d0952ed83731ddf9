using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>The empty edges of a page in millimetres.</summary>
internal sealed record Margins(double Left, double Top, double Right, double Bottom);

/// <summary>Distributes a block over pages.</summary>
internal static class PagePlanner
{
    /// <param name="paper">The paper.</param>
    /// <param name="margins">Where the block may not go.</param>
    /// <param name="body">What is printed.</param>
    /// <param name="furniture">What stands on every page as decoration, from the number of the page and of all pages; places are relative to the paper.</param>
    public static Sequence<PagePlan> Plan(Paper paper, Margins margins, Block body, Func<int, int, IEnumerable<Placed>> furniture)
    {
        var width = paper.Width - margins.Left - margins.Right;
        var height = paper.Height - margins.Top - margins.Bottom;
        var pages = new List<Items>();
        for (var rest = body; rest is not null;)
        {
            var fit = rest.Fit(width, height, true);
            if (fit.IsNothing)
            {
                throw new InvalidOperationException($"{rest.GetType().Name} places nothing on an empty page.");
            }

            pages.Add(fit.Items.Moved(margins.Left, margins.Top));
            rest = fit.Rest;
        }

        return pages.Select((items, i) => new PagePlan(() => [.. furniture(i + 1, pages.Count), .. items])).ToSequence();
    }
}
