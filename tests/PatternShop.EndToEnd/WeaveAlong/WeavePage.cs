using System.Text.Json;
using Microsoft.Playwright;

namespace PatternShop.EndToEnd;

/// <summary>Weaving along: one row at a time.</summary>
internal sealed class WeavePage(Visit visit)
{
    public ILocator Next => visit.Page.Locator("#next");

    public ILocator Back => visit.Page.Locator("#back");

    public ILocator Place => visit.Page.Locator("#place");

    public ILocator Now => visit.Page.Locator("li.now .run");

    public ILocator Said => visit.Page.Locator("#said");

    public ILocator More => visit.Page.Locator("#more");

    /// <summary>Goes to a page of weave-along and waits until its script has taken over.</summary>
    public async Task GoAsync(string address)
    {
        await visit.GoAsync(address);
        await UntilReadyAsync();
    }

    public async Task UntilReadyAsync()
    {
        await Next.WaitForAsync();
        await Place.Filter(new LocatorFilterOptions { HasTextRegex = new System.Text.RegularExpressions.Regex("\\d", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1)) }).WaitForAsync();
    }

    /// <summary>Rows woven and steps done since, as the browser keeps them.</summary>
    public async Task<(int Woven, int Step)> KeptAsync()
    {
        var kept = await visit.Page.EvaluateAsync<string?>("Object.keys(localStorage).filter(key => key.startsWith('patternshop.weave.')).map(key => localStorage.getItem(key))[0] ?? null");
        if (kept is null)
        {
            return (0, 0);
        }

        var place = JsonSerializer.Deserialize<JsonElement>(kept);
        return (place.GetProperty("woven").GetInt32(), place.GetProperty("step").GetInt32());
    }

    /// <summary>Steps done from the start, worked out from what is kept and from the runs of the pattern's rows.</summary>
    public async Task<int> StepsAsync(IReadOnlyList<WovenRow> rows)
    {
        var (woven, step) = await KeptAsync();
        return rows.Take(woven).Sum(row => row.Runs.Count) + step;
    }
}
