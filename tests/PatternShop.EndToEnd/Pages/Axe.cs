using System.Text.Json;
using Deque.AxeCore.Commons;

namespace PatternShop.EndToEnd;

/// <summary>What axe has to say about a page.</summary>
internal static class Axe
{
    // what a theme or a width can change; the rest is the same whatever the page looks like
    private static readonly string[] Places = ["target-size", "scrollable-region-focusable", "meta-viewport"];
    private static readonly string[] Looks = ["color-contrast", "link-in-text-block", .. Places];

    /// <summary>All rules, and the size of targets with them.</summary>
    public static Task<IReadOnlyList<string>> FindingsAsync(Visit visit) => RunAsync(visit, new { rules = new Dictionary<string, object>(StringComparer.Ordinal) { ["target-size"] = new { enabled = true } } });

    /// <summary>Only what a theme or a width can change.</summary>
    /// <param name="visit">Where the page is open.</param>
    /// <param name="forced">Whether the system has taken over the colours, which axe cannot see.</param>
    public static Task<IReadOnlyList<string>> LooksAsync(Visit visit, bool forced) =>
        RunAsync(visit, new { runOnly = new { type = "rule", values = forced ? Places : Looks } });

    private static async Task<IReadOnlyList<string>> RunAsync(Visit visit, object options)
    {
        // once a page: it is half a megabyte
        if (!await visit.Page.EvaluateAsync<bool>("() => 'axe' in window"))
        {
            await visit.Page.EvaluateAsync(new BundledAxeScriptProvider().GetScript());
        }

        return await visit.Page.EvaluateAsync<string[]>(
            """
            async options => (await axe.run(document, { resultTypes: ['violations'], ...JSON.parse(options) })).violations
              .flatMap(rule => rule.nodes.map(node => `${rule.id}: ${rule.help}: ${node.target} ${node.html} ${node.failureSummary}`))
            """,
            JsonSerializer.Serialize(options));
    }
}
