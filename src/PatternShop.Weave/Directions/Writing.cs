namespace PatternShop.Weave;

/// <summary>One item of a written row.</summary>
public abstract record WritingItem;

/// <summary>A run, written out.</summary>
public sealed record RunItem(Run Run) : WritingItem;

/// <summary>Runs that are woven several times, in brackets.</summary>
/// <param name="Runs">At least two runs.</param>
/// <param name="Times">At least 2.</param>
public sealed record BracketItem(Sequence<Run> Runs, int Times) : WritingItem
{
    /// <summary>Ends that the bracket covers once.</summary>
    public int Ends => Runs.Sum(run => run.Count);
}

/// <summary>The directions of a row as written: runs and brackets in the direction of travel.</summary>
public sealed record Writing(Sequence<WritingItem> Items)
{
    /// <summary>Number of items by which writings are compared: every run written is one, every bracket adds one.</summary>
    public int Length => Items.Sum(item => item is BracketItem bracket ? bracket.Runs.Count + 1 : 1);

    /// <summary>The runs that the writing stands for.</summary>
    public Sequence<Run> WriteOut() => Items.SelectMany(Expand).ToSequence();

    private static IEnumerable<Run> Expand(WritingItem item) => item switch
    {
        RunItem run => [run.Run],
        BracketItem bracket => Enumerable.Repeat(bracket.Runs, bracket.Times).SelectMany(runs => runs),
        _ => throw new InvalidOperationException($"No rule for {item.GetType().Name}."),
    };
}
