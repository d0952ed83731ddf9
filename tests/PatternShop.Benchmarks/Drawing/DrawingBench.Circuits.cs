using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Microsoft.Playwright;

namespace PatternShop.Benchmarks;

/// <content>What an open pattern costs the server.</content>
internal sealed partial class DrawingBench
{
    // the page's own addresses decide what is served, the browser's bar what the interactive half shows: nothing, for an address without a pattern
    private const string Elsewhere = "addEventListener('DOMContentLoaded', () => history.replaceState(null, '', '/studio/patterns/none'))";

    private const int MostRests = 15;
    private const long Settled = 64 * 1024;
    private static readonly TimeSpan FirstRest = TimeSpan.FromSeconds(65);
    private static readonly TimeSpan OtherRest = TimeSpan.FromSeconds(20);

    // Windows of both kinds open at the same time, each on a pattern of its own; what all windows share is in both counts.
    private async Task<IEnumerable<Figure>> CircuitsAsync()
    {
        var windows = IsTry ? 1 : 4;
        var makers = new List<BenchPage>();
        for (var window = 0; window < windows; window++)
        {
            var page = await PageAsync(Server.Address);
            await page.BeginAsync(FormattableString.Invariant($"Memory {window + 1}"), Side, Steps);
            makers.Add(page);
        }

        var addresses = makers.ConvertAll(page => page.Address);
        foreach (var page in makers)
        {
            await page.Page.CloseAsync();
        }

        var empty = await KeptAsync();
        var (nothing, first) = await OpenAsync(addresses, Elsewhere, "h1:has-text('There is nothing at this address')");
        var nothingAtOnce = await HeapAsync();
        var withNothing = await KeptAsync();
        await CloseAsync(first);
        var before = await KeptAsync();
        var (patterns, second) = await OpenAsync(addresses, "void 0", "[data-saving=saved]");
        var patternsAtOnce = await HeapAsync();
        var withPatterns = await KeptAsync();
        await CloseAsync(second);
        Console.WriteLine(FormattableString.Invariant(
            $"heap: {empty / 1024} kB, {nothing} empty pages {nothingAtOnce / 1024} kB and later {withNothing / 1024} kB, then {before / 1024} kB, {patterns} patterns {patternsAtOnce / 1024} kB and later {withPatterns / 1024} kB"));
        double More(long with, long without) => (with - before - (without - empty)) / 1024.0 / windows;
        return
        [
            new(DrawingTargets.Class, DrawingTargets.CircuitBytes, More(withPatterns, withNothing), "kB", windows),
            new(DrawingTargets.Class, DrawingTargets.CircuitBytesAtOnce, More(patternsAtOnce, nothingAtOnce), "kB", windows),
        ];
    }

    private async Task<(int Count, List<IPage> Pages)> OpenAsync(List<string> addresses, string script, string until)
    {
        var pages = new List<IPage>();
        foreach (var address in addresses)
        {
            var page = (await PageAsync(Server.Address)).Page;
            await page.AddInitScriptAsync(script);
            await page.GotoAsync(address);
            await page.Locator(until).WaitForAsync();
            pages.Add(page);
        }

        return (pages.Count, pages);
    }

    // a page that is closed says goodbye, and its circuit is gone
    private static async Task CloseAsync(List<IPage> pages)
    {
        foreach (var page in pages)
        {
            await page.CloseAsync(new PageCloseOptions { RunBeforeUnload = false });
            await page.Context.CloseAsync();
        }
    }

    // What is lent for a moment, mostly to write pages and messages, comes from pools of the process, which all circuits share. They hold megabytes
    // more or less by chance, and let go of what nobody has wanted for a minute, a few arrays each time the heap is cleared.
    private async Task<long> KeptAsync()
    {
        var (before, kept) = (long.MaxValue, await HeapAsync());
        for (var rest = 0; !IsTry && rest < MostRests && before - kept > Settled; rest++)
        {
            await Task.Delay(rest == 0 ? FirstRest : OtherRest, TimeProvider.System);
            (before, kept) = (kept, await HeapAsync());
        }

        return kept;
    }

    private async Task<long> HeapAsync()
    {
        using var caller = new TcpClient();
        await caller.ConnectAsync(IPAddress.Loopback, _heapPort);
        using var said = new StreamReader(caller.GetStream());
        return long.Parse(await said.ReadToEndAsync(), CultureInfo.InvariantCulture);
    }
}
