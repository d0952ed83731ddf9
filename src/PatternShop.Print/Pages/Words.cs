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

/// <summary>Words and a remark, which stands on their last line where there is room for it and else under them.</summary>
internal sealed record Followed(Words Main, Words? Remark) : Block
{
    private const double GapInEms = 1.2;

    public override Fit Fit(double width, double height, bool fresh)
    {
        var lines = Lettering.Lines(Main.Text, Main.Style, width);
        var set = new SetLines(lines, Main.Style, Main.Tag);
        if (Remark is null)
        {
            return set.Fit(width, height, fresh);
        }

        var left = Lettering.Width(lines[^1], Main.Style) + (GapInEms * Remark.Style.Em);
        var fit = set.Fit(width, height, fresh);
        if (fit.Rest is not null || left + Lettering.Width(Remark.Text, Remark.Style) > width)
        {
            return new Stack([new Stacked(0, set), new Stacked(0, Remark)]).Fit(width, height, fresh);
        }

        var baseline = ((lines.Count - 1) * Main.Style.LineHeight) + Main.Style.Baseline;
        return fit with { Items = [.. fit.Items, .. TextLine.Set(Remark.Text, left, baseline, Remark.Style, Remark.Tag)] };
    }
}
