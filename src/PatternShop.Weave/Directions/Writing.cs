namespace PatternShop.Weave;

/// <summary>One item of a written row.</summary>
public abstract record WritingItem
{
    /// <summary>How much there is to read: a run is one, a bracket is what stands in it and one more.</summary>
    public abstract int Length { get; }

    /// <summary>Ends that the item covers once.</summary>
    public abstract int Ends { get; }

    /// <summary>Brackets that stand inside one another here: 0 for a run, 1 for a bracket of runs, 2 for a bracket with brackets in it.</summary>
    public abstract int Depth { get; }

    internal abstract void WriteOut(List<Run> runs);
}

/// <summary>A run, written out.</summary>
public sealed record RunItem(Run Run) : WritingItem
{
    private const int Kept = 32;

    // rows are made of few different runs, thousands of times
    private static readonly Sequence<RunItem> Overs = Enumerable.Range(0, Kept).Select(count => new RunItem(new Run(Stroke.Over, count))).ToSequence();
    private static readonly Sequence<RunItem> Unders = Enumerable.Range(0, Kept).Select(count => new RunItem(new Run(Stroke.Under, count))).ToSequence();

    public override int Length => 1;

    public override int Ends => Run.Count;

    public override int Depth => 0;

    /// <summary>The item of a run.</summary>
    public static RunItem Of(Run run) => run.Count is < 0 or >= Kept ? new RunItem(run) : (run.Stroke == Stroke.Over ? Overs : Unders)[run.Count];

    internal override void WriteOut(List<Run> runs) => runs.Add(Run);
}

/// <summary>Items that are woven several times, in brackets.</summary>
/// <param name="Items">Runs, and in an outer bracket also brackets of runs.</param>
/// <param name="Times">At least 2.</param>
public sealed record BracketItem(Sequence<WritingItem> Items, int Times) : WritingItem
{
    public override int Length => Items.Sum(item => item.Length) + 1;

    public override int Ends => Items.Sum(item => item is BracketItem inner ? inner.Ends * inner.Times : item.Ends);

    public override int Depth => Items.Max(item => item.Depth) + 1;

    internal override void WriteOut(List<Run> runs)
    {
        for (var time = 0; time < Times; time++)
        {
            foreach (var item in Items)
            {
                item.WriteOut(runs);
            }
        }
    }
}

/// <summary>The directions of a row as written: runs and brackets in the direction of travel.</summary>
public sealed record Writing(Sequence<WritingItem> Items)
{
    /// <summary>Number of items by which writings are compared: every run written is one, every bracket adds one.</summary>
    public int Length => Items.Sum(item => item.Length);

    /// <summary>Brackets that stand inside one another, at most: 0, 1 or 2.</summary>
    public int Depth => Items.Count == 0 ? 0 : Items.Max(item => item.Depth);

    /// <summary>The runs that the writing stands for.</summary>
    public Sequence<Run> WriteOut()
    {
        var runs = new List<Run>();
        foreach (var item in Items)
        {
            item.WriteOut(runs);
        }

        return runs.ToSequence();
    }
}
