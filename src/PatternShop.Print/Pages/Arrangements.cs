using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>A block that never ends a page without the beginning of the one that follows it, as a heading.</summary>
/// <param name="Head">Not split.</param>
/// <param name="Between">Space between the two in millimetres.</param>
/// <param name="Body">What is announced.</param>
internal sealed record Headed(Block Head, double Between, Block Body) : Block
{
    public override Fit Fit(double width, double height, bool fresh)
    {
        var head = Head.Fit(width, height, fresh);
        if (head.Rest is not null)
        {
            return Print.Fit.Nothing(this);
        }

        var top = head.Height + Between;
        var body = Body.Fit(width, height - top, false);
        if (body.IsNothing && fresh)
        {
            body = Body.Fit(width, height - top, true);
        }

        return body.IsNothing
            ? Print.Fit.Nothing(this)
            : new Fit([.. head.Items, .. body.Items.Select(item => item.Moved(0, top))], top + body.Height, body.Rest);
    }
}

/// <summary>A block that goes to the next page rather than being split, unless it is longer than a page.</summary>
internal sealed record Whole(Block Body) : Block
{
    public override Fit Fit(double width, double height, bool fresh)
    {
        var fit = Body.Fit(width, height, fresh);
        return fit.Rest is null || fresh ? fit : Print.Fit.Nothing(this);
    }
}

/// <summary>Marks in a frame of a fixed size, never split.</summary>
internal sealed record Picture(double Width, double Height, Sequence<Placed> Items) : Block
{
    public override Fit Fit(double width, double height, bool fresh) =>
        Height <= height || fresh ? new Fit(Items, Height, null) : Print.Fit.Nothing(this);
}

/// <summary>A block with a sign at its left.</summary>
internal sealed record Bulleted(double Indent, Block? Sign, Block Body) : Block
{
    public override Fit Fit(double width, double height, bool fresh)
    {
        var body = Body.Fit(width - Indent, height, fresh);
        if (body.IsNothing)
        {
            return Print.Fit.Nothing(this);
        }

        var sign = Sign?.Fit(Indent, double.PositiveInfinity, true).Items ?? [];
        return new Fit(
            [.. sign, .. body.Items.Select(item => item.Moved(Indent, 0))],
            body.Height,
            body.Rest is { } rest ? new Bulleted(Indent, null, rest) : null);
    }
}

/// <summary>A picture with words at its right, never split.</summary>
internal sealed record Beside(Picture Picture, double Gap, Block Body) : Block
{
    public override Fit Fit(double width, double height, bool fresh)
    {
        var left = Picture.Width + Gap;
        var body = Body.Fit(width - left, double.PositiveInfinity, true);
        var needed = Math.Max(Picture.Height, body.Height);
        return needed <= height || fresh
            ? new Fit([.. Picture.Items, .. body.Items.Select(item => item.Moved(left, 0))], needed, null)
            : Print.Fit.Nothing(this);
    }
}
