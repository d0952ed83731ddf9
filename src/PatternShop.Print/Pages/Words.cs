using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Text that flows over as many lines as it takes, flush left.</summary>
/// <param name="Text">One paragraph.</param>
/// <param name="Style">How it is set.</param>
/// <param name="Tag">What it is; null for decoration.</param>
internal sealed record Words(string Text, TextStyle Style, Tag? Tag) : Block
{
    public override Fit Fit(double width, double height, bool fresh) =>
        new SetLines(Lettering.Lines(Text, Style, width), Style, Tag).Fit(width, height, fresh);
}

/// <summary>Lines that are broken already. A page break leaves at least two lines on either side where there are four or more.</summary>
internal sealed record SetLines(Sequence<string> Lines, TextStyle Style, Tag? Tag) : Block
{
    private const double Rounding = 1e-6;

    public override Fit Fit(double width, double height, bool fresh)
    {
        var count = CountThatFits((int)Math.Floor((height + Rounding) / Style.LineHeight), fresh);
        if (count == 0)
        {
            return Print.Fit.Nothing(this);
        }

        var items = Enumerable.Range(0, count).SelectMany(i => TextLine.Set(Lines[i], 0, (i * Style.LineHeight) + Style.Baseline, Style, Tag));
        var rest = count == Lines.Count ? null : this with { Lines = Lines.Skip(count).ToSequence() };
        return new Fit(items.ToSequence(), count * Style.LineHeight, rest);
    }

    private int CountThatFits(int room, bool fresh)
    {
        if (room >= Lines.Count)
        {
            return Lines.Count;
        }

        var most = Lines.Count < 4 ? 0 : Math.Min(room, Lines.Count - 2);
        return fresh ? Math.Max(1, Math.Max(most, Math.Min(room, Lines.Count))) : most < 2 ? 0 : most;
    }
}
