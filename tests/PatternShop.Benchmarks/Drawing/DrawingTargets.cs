namespace PatternShop.Benchmarks;

/// <summary>What drawing is asked to show.</summary>
internal static class DrawingTargets
{
    public const string Class = "Drawing";

    public static IReadOnlyList<Target> All { get; } =
    [
        .. DrawingBench.Delays.Select(delay => new AtMost(Class, DrawTime(delay), 16)),
        .. DrawingBench.Delays.Skip(1).Select(delay => new Near(Class, DrawTime(delay), DrawTime(0), 2)),
        new AtMost(Class, StrokeMessages, 1),
        new AtMost(Class, StrokeBytes, 1024),
        new AtMost(Class, BytesBack, 2048),
        new AtMost(Class, CircuitBytes, 1024),
        new AtMost(Class, CursorTold, 100),
        new AtMost(Class, MarkTold, 100),
        new AtMost(Class, FindingTold, 100),
        new AtMost(Class, MostTold, 10),
    ];

    public const string StrokeMessages = "messages of ours a stroke, the most";
    public const string StrokeBytes = "sent for a stroke, the framework's own acknowledgements included, the most";
    public const string BytesBack = "received after a stroke beyond the text that changed, the most";
    public const string CircuitBytes = "kept on the server for an open pattern with 500 steps, beyond an empty interactive page";
    public const string CircuitBytesAtOnce = "on the server for such a pattern as soon as it is open, with buffers that all circuits share and give back within a minute";
    public const string CursorTold = "from a key to the row, end, over or under that it moves to, processor slowed 4 ×, 95 of 100";
    public const string MarkTold = "from a key that marks to what the cell is now, processor slowed 4 ×, 95 of 100";
    public const string FindingTold = "from a key that marks a row to the findings that follow, 95 of 100";
    public const string MostTold = "announcements in a second while keys come as fast as they can, the most";

    public static string DrawTime(int delay) => FormattableString.Invariant($"from event.timeStamp to the end of the draw call, processor slowed 4 ×, {delay} ms added to the round trip, 95 of 100");
}

/// <summary>A figure is no larger.</summary>
internal sealed record AtMost(string Class, string What, double Most) : Target(Class)
{
    public override string Text => $"{Class}: {What}: at most {Number(Most)}";

    protected override (bool Met, string Said)? Judge(IReadOnlyList<Measured> cases, IReadOnlyList<Figure> figures) =>
        figures.FirstOrDefault(figure => figure.What == What) is { } figure ? (figure.Value <= Most, $"{Number(figure.Value)} {figure.Unit}") : null;
}

/// <summary>A figure differs from another by no more.</summary>
internal sealed record Near(string Class, string What, string Other, double Most) : Target(Class)
{
    public override string Text => $"{Class}: {What}: at most {Number(Most)} from what it is without";

    protected override (bool Met, string Said)? Judge(IReadOnlyList<Measured> cases, IReadOnlyList<Figure> figures) =>
        figures.FirstOrDefault(figure => figure.What == What) is { } one && figures.FirstOrDefault(figure => figure.What == Other) is { } other
            ? (Math.Abs(one.Value - other.Value) <= Most, $"{Number(Math.Abs(one.Value - other.Value))} {one.Unit}")
            : null;
}
