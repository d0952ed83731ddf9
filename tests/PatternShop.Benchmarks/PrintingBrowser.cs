using Microsoft.Playwright;
using PatternShop.EndToEnd;

namespace PatternShop.Benchmarks;

/// <summary>The built app, and headless Chromium that shows a page of it and can print it.</summary>
internal sealed class PrintingBrowser : IAsyncDisposable
{
    private static readonly string[] Quiet =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private readonly DataFolder _data = new();
    private ServerProcess? _server;
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private IPage? _page;

    private PrintingBrowser()
    {
    }

    /// <summary>Starts both and waits until the page is there.</summary>
    /// <param name="path">Of the page.</param>
    /// <param name="title">What its title holds.</param>
    public static async Task<PrintingBrowser> ShowAsync(string path, string title)
    {
        var shown = new PrintingBrowser();
        shown._server = await ServerProcess.StartAsync(shown._data);
        shown._playwright = await Playwright.CreateAsync();
        shown._browser = await shown._playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Programs.Chromium, Args = Quiet });
        shown._page = await shown._browser.NewPageAsync();
        await shown._page.GotoAsync(new Uri(shown._server.Address, path).ToString(), new PageGotoOptions { WaitUntil = WaitUntilState.NetworkIdle });
        return (await shown._page.TitleAsync()).Contains(title, StringComparison.Ordinal) ? shown : throw new InvalidOperationException("The pattern's page was not shown.");
    }

    /// <summary>The page as a PDF file, with what Chromium does unless asked for more.</summary>
    public Task<byte[]> PrintAsync() => _page!.PdfAsync(new PagePdfOptions { Format = "A4", PrintBackground = true });

    public async ValueTask DisposeAsync()
    {
        await (_browser?.DisposeAsync() ?? ValueTask.CompletedTask);
        _playwright?.Dispose();
        await (_server?.DisposeAsync() ?? ValueTask.CompletedTask);
        _data.Dispose();
    }
}
