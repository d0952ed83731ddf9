using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>A server of its own with a maker, for the tests of a class that write but do not mind each other's patterns.</summary>
public sealed class MakerBench(Stage stage) : IAsyncLifetime
{
    private readonly OwnServer _own = new();
    private IReadOnlyList<BrowserContextCookiesResult> _session = [];

    public ServerProcess Server => _own.Server;

    public async ValueTask InitializeAsync()
    {
        ArgumentNullException.ThrowIfNull(stage);
        await _own.InitializeAsync();
        await using var visit = await Visit.OpenAsync(stage.Browser, Server.Address, Reader.Desk);
        await SetUp.DoAsync(visit, Server);
        await KeepAsync(visit.Page);
    }

    /// <summary>Lets a window in as the maker. Signing in itself is throttled.</summary>
    public Task EnterAsync(Visit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return visit.Page.Context.AddCookiesAsync(_session.Select(cookie => new Cookie { Name = cookie.Name, Value = cookie.Value, Domain = cookie.Domain, Path = cookie.Path }));
    }

    /// <summary>Remembers the session of a window, for those that come after.</summary>
    public async Task KeepAsync(IPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        _session = await page.Context.CookiesAsync();
    }

    /// <summary>Ends the server as kill -9 does, if it still runs, and starts another in its place.</summary>
    public Task StartAgainAsync() => _own.StartAgainAsync();

    public ValueTask DisposeAsync() => _own.DisposeAsync();
}
