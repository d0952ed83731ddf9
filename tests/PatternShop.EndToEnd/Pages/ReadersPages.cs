using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Looks at pages as four readers do: in light and dark, with scripts and without, on a wide and on the narrowest screen.</summary>
internal static class ReadersPages
{
    private static readonly Reader[] Readers =
        [Reader.Phone, Reader.Desk with { Dark = true }, new Reader(320, 568, Script: false, Dark: true), Reader.Desk with { Script = false }];

    // axe is a script itself: where pages have none, theirs come empty
    private static async Task<Visit> OpenAsync(Func<Reader, Task<Visit>> open, Reader reader)
    {
        var visit = await open(reader with { Script = true });
        if (!reader.Script)
        {
            await visit.Page.RouteAsync("**/scripts/**", route => route.FulfillAsync(new RouteFulfillOptions { ContentType = "text/javascript", Body = "" }));
        }

        return visit;
    }

    /// <summary>What axe finds, and what makes a page scroll sideways; each page is known by its heading first.</summary>
    public static async Task<IReadOnlyList<string>> FaultsAsync(Func<Reader, Task<Visit>> open, IReadOnlyList<(string Address, string Heading)> pages)
    {
        var faults = new List<string>();
        foreach (var reader in Readers)
        {
            var visit = await OpenAsync(open, reader);
            foreach (var (address, heading) in pages)
            {
                await visit.GoAsync(address);
                Assert.Equal((address, heading), (address, await visit.Page.Locator("h1").TextContentAsync()));
                var isWeaving = reader.Script && address.EndsWith("/weave", StringComparison.Ordinal);
                if (isWeaving)
                {
                    await new WeavePage(visit).UntilReadyAsync();
                }

                await LookAsync(visit, $"{address}, {reader}");
                if (isWeaving)
                {
                    await new WeavePage(visit).More.ClickAsync();
                    await visit.Page.Locator("#options[open]").WaitForAsync();
                    await LookAsync(visit, $"{address}, more, {reader}");
                }
            }
        }

        return faults;

        async Task LookAsync(Visit visit, string where)
        {
            faults.AddRange((await Axe.FindingsAsync(visit)).Select(finding => $"{where}: {finding}"));
            faults.AddRange((await Width.OverflowAsync(visit)).Select(wide => $"{where}: {wide}"));
        }
    }
}
