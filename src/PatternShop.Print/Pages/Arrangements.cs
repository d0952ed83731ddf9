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
            : new Fit(Items.Joined([head.Items, body.Items.Moved(0, top)]), top + body.Height, body.Rest);
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
internal sealed record Picture(double Width, double Height, Items Items) : Block
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

        var sign = Sign?.Fit(Indent, double.PositiveInfinity, true).Items ?? Items.None;
        return new Fit(
            Items.Joined([sign, body.Items.Moved(Indent, 0)]),
            body.Height,
            body.Rest is { } rest ? new Bulleted(Indent, null, rest) : null);
    }
}

/// <summary>Words with a picture at their right, never split.</summary>
internal sealed record Sided(Block Body, double Gap, Picture Picture) : Block
{
    public override Fit Fit(double width, double height, bool fresh)
    {
        var body = Body.Fit(width - Picture.Width - Gap, double.PositiveInfinity, true);
        var needed = Math.Max(Picture.Height, body.Height);
        return needed <= height || fresh
            ? new Fit(Items.Joined([body.Items, Picture.Items.Moved(width - Picture.Width, 0)]), needed, null)
            : Print.Fit.Nothing(this);
    }
}

/// <summary>A block of a fixed width and what stands at its right. What of the latter finds no room goes on under both.</summary>
internal sealed record Beside(Block Left, double LeftWidth, double Gap, Block Right) : Block
{
    public override Fit Fit(double width, double height, bool fresh)
    {
        var left = Left.Fit(LeftWidth, height, fresh);
        var right = Right.Fit(width - LeftWidth - Gap, height, fresh);
        return left.Rest is not null || right.IsNothing
            ? Print.Fit.Nothing(this)
            : new Fit(Items.Joined([left.Items, right.Items.Moved(LeftWidth + Gap, 0)]), Math.Max(left.Height, right.Height), right.Rest);
    }
}

/// <summary>A block of a width of its own, at a distance from where it would stand; never split.</summary>
internal sealed record Loose(Block Body, double Width, double Right, double Down) : Block
{
    public override Fit Fit(double width, double height, bool fresh)
    {
        var body = Body.Fit(Width, double.PositiveInfinity, true);
        return new Fit(body.Items.Moved(Right, Down), Down + body.Height, null);
    }
}

/// <summary>A block that begins a page.</summary>
internal sealed record OnNewPage(Block Body) : Block
{
    public override Fit Fit(double width, double height, bool fresh) => fresh ? Body.Fit(width, height, true) : Print.Fit.Nothing(this);
}

/// <summary>A block in two columns of nearly the same height, the left one first.</summary>
internal sealed record TwoColumns(Block Body, double Gap) : Block
{
    private const double Exactness = 0.5;

    public override Fit Fit(double width, double height, bool fresh)
    {
        var column = (width - Gap) / 2;
        // what is longer than both columns is not measured to its end
        var full = double.IsInfinity(height) ? null : FillBoth(column, height, fresh);
        if (full is { Rest: not null })
        {
            // heads that the right column repeats can make less height hold what more does not; in one column there is air that is left out where it is parted
            return Body.Fit(column, 3 * height, true).Rest is null && Fit(width, double.PositiveInfinity, true) is { Rest: null } balanced && balanced.Height <= height ? balanced : full;
        }

        var all = Body.Fit(column, double.PositiveInfinity, true);
        var (low, high) = (all.Height / 2, Math.Min(height, all.Height));
        if (!Fits(column, high))
        {
            return FillBoth(column, height, fresh);
        }

        while (high - low > Exactness)
        {
            var middle = (low + high) / 2;
            (low, high) = Fits(column, middle) ? (low, middle) : (middle, high);
        }

        return FillBoth(column, high, true);
    }

    private bool Fits(double column, double height) =>
        Body.Fit(column, height, true).Rest is not { } rest || rest.Fit(column, height, true) is { Rest: null } right && right.Height <= height;

    private Fit FillBoth(double column, double height, bool fresh)
    {
        var left = Body.Fit(column, height, fresh);
        if (left.Rest is not { } rest || left.IsNothing)
        {
            return left.IsNothing ? Print.Fit.Nothing(this) : left;
        }

        var right = rest.Fit(column, height, true);
        return new Fit(
            Items.Joined([left.Items, right.Items.Moved(column + Gap, 0)]),
            Math.Max(left.Height, right.Height),
            right.Rest is null ? null : this with { Body = right.Rest });
    }
}

/// <summary>A block in a dashed frame of a width of its own, to be cut out; never split.</summary>
/// <param name="Width">Of the frame.</param>
/// <param name="Body">What stands in it.</param>
/// <param name="Least">The frame is at least so high.</param>
/// <param name="Mark">Where a line runs across that says down to where it is pasted; null without one.</param>
internal sealed record Framed(double Width, Block Body, double Least, double? Mark) : Block
{
    // numbers stand at the very edge of a row
    private const double Rim = 1.5;
    private const double Tick = 3;

    public override Fit Fit(double width, double height, bool fresh)
    {
        var body = Body.Fit(Width, double.PositiveInfinity, true);
        var bottom = Math.Max(body.Height, Least);
        if (bottom > height && !fresh)
        {
            return Print.Fit.Nothing(this);
        }

        Sequence<Sequence<Spot>> frame =
        [
            .. SheetMarks.DashesOf(new Spot(-Rim, 0), new Spot(Width, 0)),
            .. SheetMarks.DashesOf(new Spot(-Rim, bottom), new Spot(Width, bottom)),
            .. SheetMarks.DashesOf(new Spot(-Rim, 0), new Spot(-Rim, bottom)),
            .. SheetMarks.DashesOf(new Spot(Width, 0), new Spot(Width, bottom)),
        ];
        Sequence<Sequence<Spot>> marks = Mark is { } at ? [[new Spot(-Rim - Tick, at), new Spot(-Rim, at)], [new Spot(Width, at), new Spot(Width + Tick, at)]] : [];
        return new Fit(
            [
                .. body.Items,
                new Placed(new StrokeMark(0, 0, frame, false, 0.25, 0), null),
                .. marks.Count == 0 ? [] : new[] { new Placed(new StrokeMark(0, 0, marks, false, 0.5, 0), null) },
            ],
            bottom,
            null);
    }
}
