using Microsoft.Playwright;
using Xunit;

[assembly: AssemblyFixture(typeof(PatternShop.EndToEnd.Stage))]

namespace PatternShop.EndToEnd;

/// <summary>
/// What all journeys share: one browser, and one server for journeys that only read. A journey that writes, or ends
/// its server, starts one of its own.
/// </summary>
public sealed class Stage : IAsyncLifetime
{
    // what Playwright turns off (the last list counts), and what every window would start behind our backs: two pages of the
    // browser's own address field, and a spare process
    private const string TurnedOff =
        "--disable-features=AvoidUnnecessaryBeforeUnloadCheckSync,DestroyProfileOnBrowserClose,DialMediaRouteProvider,GlobalMediaControls,HttpsUpgrades,LensOverlay,"
        + "MediaRouter,PaintHolding,ThirdPartyStoragePartitioning,BlockOriginHeaderModificationOnRedirect,AvoidCorsURLLoaderRestartOnRedirect,Translate,AutoDeElevate,"
        + "OptimizationHints,NetworkTimeServiceQuerying,AimEnabled,WebUIOmniboxPopup,WebUIOmniboxAimPopup,WebUIOmniboxFullPopup,SpareRendererForSitePerProcess";

    private static readonly string[] Quiet =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--host-resolver-rules=MAP localhost 127.0.0.1", TurnedOff];

    private readonly DataFolder _data = new();
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private ServerProcess? _server;

    public IBrowser Browser => _browser ?? throw new InvalidOperationException("There is no browser yet.");

    public ServerProcess Server => _server ?? throw new InvalidOperationException("There is no server yet.");

    public async ValueTask InitializeAsync()
    {
        _server = await ServerProcess.StartAsync(_data);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Programs.Chromium, Args = Quiet });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
        if (_server is not null)
        {
            await _server.DisposeAsync();
        }

        _data.Dispose();
    }
}
