using Deque.AxeCore.Playwright;

namespace PatternShop.EndToEnd;

/// <summary>What axe has to say about a page.</summary>
internal static class Axe
{
    public static async Task<IReadOnlyList<string>> FindingsAsync(Visit visit)
    {
        var result = await visit.Page.RunAxe();
        return [.. result.Violations.SelectMany(rule => rule.Nodes.Select(node => $"{rule.Id}: {rule.Help}: {node.Target} {node.Html}"))];
    }
}
