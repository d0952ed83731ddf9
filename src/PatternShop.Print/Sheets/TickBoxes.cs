using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Boxes to tick, with their numbers inside when there are several.</summary>
/// <param name="First">Number of the first box.</param>
/// <param name="Last">Number of the last box.</param>
/// <param name="Numbered">Whether the numbers are shown.</param>
/// <param name="Style">How the numbers are set; the boxes go with them.</param>
/// <param name="Tag">What they belong to.</param>
/// <param name="Wording">Names the boxes for those who cannot see them.</param>
internal sealed record TickBoxes(int First, int Last, bool Numbered, TextStyle Style, Tag Tag, Wording Wording) : Block
{
    // room for three figures
    private const double SideInEms = 2.07;
    private const double Gap = 1.6;
    private const double Rounding = 0.01;

    /// <summary>How wide so many boxes are that stand beside each other.</summary>
    public static double WidthOf(int count, TextStyle style) => (count * ((SideInEms * style.Em) + Gap)) - Gap;

    private double Side => SideInEms * Style.Em;

    private double Pitch => Side + Gap;

    public override Fit Fit(double width, double height, bool fresh)
    {
        var across = Math.Max(1, (int)((width + Gap + Rounding) / Pitch));
        var lines = Math.Max(fresh ? 1 : 0, (int)((height + Gap) / Pitch));
        var count = (int)Math.Min(Last - First + 1L, (long)across * lines);
        if (count == 0)
        {
            return Print.Fit.Nothing(this);
        }

        var rest = First + count > Last ? null : this with { First = First + count };
        return new Fit(Draw(count, across), ((count + across - 1) / across * Pitch) - Gap, rest);
    }

    private Sequence<Placed> Draw(int count, int across)
    {
        var corners = Enumerable.Range(0, count).Select(i => new Spot(i % across * Pitch, i / across * Pitch)).ToList();
        var frames = corners.Select(Frame).ToSequence();
        var boxes = new Tag(TagKind.Span, Tag) { ActualText = Wording.BoxesText(First, First + count - 1) };
        var numbers = corners.SelectMany((corner, i) => Numbered ? Number(First + i, corner, boxes) : []);
        return [new Placed(new StrokeMark(0, 0, frames, true, 0.3, 0.1), boxes), .. numbers];
    }

    private Sequence<Spot> Frame(Spot corner) =>
        [corner, new(corner.X + Side, corner.Y), new(corner.X + Side, corner.Y + Side), new(corner.X, corner.Y + Side)];

    private IEnumerable<Placed> Number(int number, Spot corner, Tag boxes)
    {
        var text = Wording.Number(number);
        var left = corner.X + ((Side - Lettering.Width(text, Style)) / 2);
        return TextLine.Set(text, left, corner.Y + (Side / 2) + (0.35 * Style.Em), Style, boxes);
    }
}
