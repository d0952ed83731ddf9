using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>By what rule 8 compares writings: items, brackets of one motif, then as the engine says: brackets with brackets in them, brackets.</summary>
internal readonly record struct WritingRank(int Items, int MotifBrackets, int Nested, int Brackets)
{
    /// <summary>Compares as writings do: the least is the best.</summary>
    public (int, int, int, int) Order => (Items, -MotifBrackets, Nested, Brackets);

    public static WritingRank operator +(WritingRank a, WritingRank b) =>
        new(a.Items + b.Items, a.MotifBrackets + b.MotifBrackets, a.Nested + b.Nested, a.Brackets + b.Brackets);
}

/// <summary>Every way to write a few runs, found by trying; shares nothing with the engine's search.</summary>
internal static class AllWritings
{
    /// <summary>Every way to write the runs with so many levels of brackets.</summary>
    public static IEnumerable<IEnumerable<WritingItem>> Of(Sequence<Run> runs, int levels) => From(runs, 0, levels);

    private static IEnumerable<IEnumerable<WritingItem>> From(Sequence<Run> runs, int start, int levels)
    {
        if (start == runs.Count)
        {
            return [[]];
        }

        var plain = From(runs, start + 1, levels).Select(rest => rest.Prepend(new RunItem(runs[start])));
        if (levels == 0)
        {
            return plain;
        }

        var bracketed =
            from period in Enumerable.Range(1, runs.Count)
            from times in Enumerable.Range(2, runs.Count)
            where start + (period * times) <= runs.Count
                && Enumerable.Range(start, period * (times - 1)).All(i => runs[i] == runs[i + period])
            from inner in From(runs.Skip(start).Take(period).ToSequence(), 0, levels - 1)
            let bracket = new BracketItem(inner.ToSequence(), times)
            from rest in From(runs, start + (period * times), levels)
            select rest.Prepend(bracket);
        return plain.Concat(bracketed);
    }

    /// <summary>The writing is one of all with two levels, and none ranks before it. Gives those with as few items.</summary>
    public static List<Writing> AssertBest(Writing writing, Sequence<Run> runs, int motifEnds)
    {
        var all = Of(runs, 2).Select(items => new Writing(items.ToSequence())).ToList();
        Assert.Contains(writing, all);
        var rank = CostOf(writing, motifEnds);
        Assert.Equal(rank.Items, writing.Length);
        Assert.Equal(all.Min(other => CostOf(other, motifEnds).Order), rank.Order);
        return [.. all.Where(other => CostOf(other, motifEnds).Items == rank.Items)];
    }

    public static int MotifBrackets(Writing writing, int motifEnds) => CostOf(writing, motifEnds).MotifBrackets;

    public static WritingRank CostOf(Writing writing, int motifEnds) => Sum(writing.Items, motifEnds);

    private static WritingRank Sum(IEnumerable<WritingItem> items, int motifEnds) =>
        items.Aggregate(default(WritingRank), (sum, item) => sum + CostOf(item, motifEnds));

    private static WritingRank CostOf(WritingItem item, int motifEnds) => item is BracketItem bracket
        ? Sum(bracket.Items, motifEnds) + new WritingRank(1, Ends(bracket.Items) == motifEnds ? 1 : 0, bracket.Items.Any(inner => inner is BracketItem) ? 1 : 0, 1)
        : new WritingRank(1, 0, 0, 0);

    private static int Ends(IEnumerable<WritingItem> items) =>
        items.Sum(item => item is BracketItem bracket ? bracket.Times * Ends(bracket.Items) : ((RunItem)item).Run.Count);
}
