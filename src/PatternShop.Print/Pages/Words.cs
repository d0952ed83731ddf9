using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Text that flows over as many lines as it takes, flush left.</summary>
/// <param name="Text">One paragraph; a tab in it is a space.</param>
/// <param name="Style">How it is set.</param>
/// <param name="Tag">What it is; null for decoration.</param>
internal sealed record Words(string Text, TextStyle Style, Tag? Tag) : Block
{
    private readonly BrokenLines _broken = new();

    public string Text { get; } = Text.Replace('\t', ' ');

    public override Fit Fit(double width, double height, bool fresh) => Set(width).Fit(width, height, fresh);

    /// <summary>Its lines in a width.</summary>
    public SetLines Set(double width) => new(_broken.Of(Text, Style, width), Style, Tag);
}

/// <summary>Remembers how a text was broken last: a block is asked again and again for the same width. Says nothing about who holds it, so all are equal.</summary>
internal sealed class BrokenLines : IEquatable<BrokenLines>
{
    private (string Text, TextStyle Style, double Width, Sequence<string> Lines)? _last;

    public Sequence<string> Of(string text, TextStyle style, double width)
    {
        if (_last is { } last && ReferenceEquals(last.Text, text) && ReferenceEquals(last.Style, style) && last.Width == width)
        {
            return last.Lines;
        }

        var lines = Lettering.Lines(text, style, width);
        _last = (text, style, width, lines);
        return lines;
    }

    public bool Equals(BrokenLines? other) => other is not null;

    public override bool Equals(object? obj) => obj is BrokenLines;

    public override int GetHashCode() => 0;
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

        var items = Lines.All(line => line.Length == 0)
            ? Items.None
            : Items.Later(() => Enumerable.Range(0, count).SelectMany(i => TextLine.Set(Lines[i], 0, (i * Style.LineHeight) + Style.Baseline, Style, Tag)));
        var rest = count == Lines.Count ? null : this with { Lines = Lines.Skip(count).ToSequence() };
        return new Fit(items, count * Style.LineHeight, rest);
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
/// <param name="Main">The words.</param>
/// <param name="Remark">What is remarked.</param>
/// <param name="Left">Room at the left of all lines but the first, in millimetres: the remark stands there rather than under the words where it fits.</param>
internal sealed record Followed(Words Main, Words? Remark, double Left = 0) : Block
{
    private const double Gutter = 2.5;
    private const double Slack = 0.5;

    // So few lines are read at one glance and go to the next page together.
    private const int ReadAtOnce = 6;

    public override Fit Fit(double width, double height, bool fresh)
    {
        var set = Main.Set(width);
        if (AtTheLeft(set, width) is { } placed)
        {
            return new Whole(placed).Fit(width, height, fresh);
        }

        Block all = Remark is null ? set : new FollowedLines(set, Remark);
        return (set.Lines.Count <= ReadAtOnce ? new Whole(all) : all).Fit(width, height, fresh);
    }

    // Where the last line leaves no room for it.
    private Picture? AtTheLeft(SetLines set, double width)
    {
        if (Left <= Gutter || Remark is null || set.Lines.Count is 1 or > ReadAtOnce || FollowedLines.IsBeside(set, Remark, width))
        {
            return null;
        }

        var remark = Remark.Set(Left - Gutter);
        var main = set.Lines.Count * set.Style.LineHeight;
        return set.Style.LineHeight + (remark.Lines.Count * remark.Style.LineHeight) > main + Slack
            ? null
            : new Picture(width, main, Items.Joined([set.Fit(width, double.PositiveInfinity, true).Items, remark.Fit(Left, double.PositiveInfinity, true).Items.Moved(-Left, set.Style.LineHeight)]));
    }
}

/// <summary>The same with lines that are broken already. A remark is never parted from the last two lines.</summary>
internal sealed record FollowedLines(SetLines Main, Words Remark) : Block
{
    private const double GapInEms = 1.2;
    private const double Rounding = 1e-6;
    private const int Kept = 2;

    public override Fit Fit(double width, double height, bool fresh)
    {
        var left = LeftOf(Main, Remark);
        var beside = IsBeside(Main, Remark, width);
        var under = beside ? new Fit([], 0, null) : Remark.Fit(width, double.PositiveInfinity, true);
        var main = Main.Lines.Count * Main.Style.LineHeight;
        if (main + under.Height <= height + Rounding || (fresh && Main.Lines.Count <= Kept))
        {
            var baseline = ((Main.Lines.Count - 1) * Main.Style.LineHeight) + Main.Style.Baseline;
            var remark = beside ? Items.Later(() => TextLine.Set(Remark.Text, left, baseline, Remark.Style, Remark.Tag)) : under.Items.Moved(0, main);
            return new Fit(Items.Joined([Main.Fit(width, double.PositiveInfinity, true).Items, remark]), main + under.Height, null);
        }

        return Main.Lines.Count <= Kept ? Print.Fit.Nothing(this) : Split(width, height, fresh);
    }

    /// <summary>Whether the remark stands on the last line.</summary>
    public static bool IsBeside(SetLines main, Words remark, double width) => LeftOf(main, remark) + Lettering.Width(remark.Text, remark.Style) <= width;

    private static double LeftOf(SetLines main, Words remark) => Lettering.Width(main.Lines[^1], main.Style) + (GapInEms * remark.Style.Em);

    private Fit Split(double width, double height, bool fresh)
    {
        var first = (Main with { Lines = Main.Lines.SkipLast(Kept).ToSequence() }).Fit(width, height, fresh);
        var later = first.Rest is SetLines rest ? rest.Lines : [];
        return first.IsNothing
            ? Print.Fit.Nothing(this)
            : first with { Rest = this with { Main = Main with { Lines = [.. later, .. Main.Lines.TakeLast(Kept)] } } };
    }
}
