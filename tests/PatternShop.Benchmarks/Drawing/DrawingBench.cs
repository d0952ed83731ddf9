using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using Microsoft.Playwright;
using PatternShop.EndToEnd;

namespace PatternShop.Benchmarks;

/// <summary>Drawing in a real browser on the published program: how soon a stroke shows, what it costs on the line, what an open pattern costs the server.</summary>
internal sealed partial class DrawingBench : IAsyncDisposable
{
    private const int Slow = 4;
    private readonly DataFolder _data = new();
    private readonly int _heapPort = FreePort();
    private PublishedApp? _app;
    private ServerProcess? _server;
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private string _session = "";

    /// <summary>Milliseconds that are added to the round trip.</summary>
    public static IReadOnlyList<int> Delays { get; } = [0, 200, 500];

    /// <summary>How much is done; a try of the program itself does little.</summary>
    public required bool IsTry { get; init; }

    private int Side => IsTry ? 40 : 200;

    private int Steps => IsTry ? 20 : 500;

    private ServerProcess Server => _server ?? throw new InvalidOperationException("There is no server yet.");

    private IBrowser Browser => _browser ?? throw new InvalidOperationException("There is no browser yet.");

    public static async Task<IReadOnlyList<Figure>> MeasureAsync(bool isTry)
    {
        await using var bench = new DrawingBench { IsTry = isTry };
        await bench.OpenAsync();
        return [.. await bench.DrawTimesAsync(), .. await bench.TrafficAsync(), .. await bench.AnnouncementsAsync(), .. await bench.CircuitsAsync()];
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

        _app?.Dispose();
        _data.Dispose();
    }

    private async Task OpenAsync()
    {
        _app = await PublishedApp.MakeAsync();
        Environment.SetEnvironmentVariable("PATTERNSHOP_APP", _app.Program);
        Environment.SetEnvironmentVariable("DOTNET_STARTUP_HOOKS", typeof(DrawingBench).Assembly.Location);
        Environment.SetEnvironmentVariable(StartupHook.Port, _heapPort.ToString(CultureInfo.InvariantCulture));
        _server = await ServerProcess.StartAsync(_data);
        Environment.SetEnvironmentVariable("DOTNET_STARTUP_HOOKS", null);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Programs.Chromium,
            Args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
        await SetUpAsync();
    }

    private async Task SetUpAsync()
    {
        var line = await Server.LineAsync("/setup?code=");
        await using var context = await Browser.NewContextAsync(new BrowserNewContextOptions { BaseURL = Server.Address.ToString() });
        var page = await context.NewPageAsync();
        await page.GotoAsync(line[line.IndexOf("/setup?code=", StringComparison.Ordinal)..].Trim());
        foreach (var (label, text) in new[] { ("Studio name", "Bench"), ("Public handle", "bench"), ("E-mail", "bench@example.org"), ("Passphrase", "wooden benches measure well"), ("The same passphrase again", "wooden benches measure well") })
        {
            await page.GetByLabel(label, new PageGetByLabelOptions { Exact = true }).FillAsync(text);
        }

        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Set up the shop" }).ClickAsync();
        await page.WaitForURLAsync("**/studio");
        _session = await context.StorageStateAsync();
    }

    private async Task<BenchPage> PageAsync(Uri address) => await BenchPage.OpenAsync(await Browser.NewContextAsync(new BrowserNewContextOptions
    {
        BaseURL = address.ToString(),
        StorageState = _session,
        ViewportSize = new ViewportSize { Width = 1280, Height = 900 },
    }));

    // Rounds of all delays, each time in another order, on the same page: whatever else the machine does meets them alike.
    private async Task<IEnumerable<Figure>> DrawTimesAsync()
    {
        await using var line = new CutLine(Server);
        var page = await PageAsync(line.Address);
        await page.BeginAsync("Draw times", Side, 2);
        await page.SlowAsync(Slow);
        var (rounds, strokes, moves) = IsTry ? (1, 2, 5) : (6, 5, 20);
        var times = Delays.ToDictionary(delay => delay, _ => new List<double>());
        for (var round = -1; round < rounds; round++)
        {
            for (var turn = 0; turn < Delays.Count; turn++)
            {
                var delay = Delays[(turn + round + Delays.Count) % Delays.Count];
                line.Delay = TimeSpan.FromMilliseconds(delay / 2.0);
                for (var stroke = 0; stroke < strokes; stroke++)
                {
                    await page.StrokeAsync((round * strokes) + stroke + 40, moves);
                }

                await page.SavedAsync();
                var taken = await page.DrawsAsync();
                // the first round warms up
                times[delay].AddRange(round < 0 ? [] : taken);
            }
        }

        await page.Page.Context.CloseAsync();
        return Delays.Select(delay => new Figure(DrawingTargets.Class, DrawingTargets.DrawTime(delay), Figure.P95(times[delay]), "ms", times[delay].Count));
    }

    private async Task<IEnumerable<Figure>> TrafficAsync()
    {
        var page = await PageAsync(Server.Address);
        var (sent, received) = (new List<IWebSocketFrame>(), new List<int>());
        page.Page.WebSocket += (_, socket) =>
        {
            socket.FrameSent += (_, frame) => Add(sent, frame);
            socket.FrameReceived += (_, frame) => Add(received, BenchPage.Bytes(frame));
        };
        await page.BeginAsync("Traffic", Side, 2);
        await page.Page.EvaluateAsync("() => bench.watchText()");
        var strokes = IsTry ? 2 : 20;
        var (messages, bytes, back) = (new List<double>(), new List<double>(), new List<double>());
        for (var stroke = 0; stroke < strokes; stroke++)
        {
            await QuietAsync(page, sent, received);
            Clear(sent);
            Clear(received);
            await page.Page.EvaluateAsync("() => { bench.text = 0; }");
            await page.StrokeAsync(stroke, 8);
            await page.SavedAsync();
            await QuietAsync(page, sent, received);
            var text = await page.Page.EvaluateAsync<int>("() => bench.text");
            messages.Add(Copy(sent).Count(IsOurs));
            bytes.Add(Copy(sent).Sum(BenchPage.Bytes));
            back.Add(Copy(received).Sum() - text);
        }

        await page.Page.Context.CloseAsync();
        return
        [
            new(DrawingTargets.Class, DrawingTargets.StrokeMessages, messages.Max(), "messages", strokes),
            new(DrawingTargets.Class, DrawingTargets.StrokeBytes, bytes.Max(), "bytes", strokes),
            new(DrawingTargets.Class, DrawingTargets.BytesBack, back.Max(), "bytes", strokes),
        ];
    }

    private static bool IsOurs(IWebSocketFrame frame) => Encoding.Latin1.GetString(frame.Binary ?? []).Contains("BeginInvokeDotNetFromJS", StringComparison.Ordinal);

    // a second without a word on the line, and in the page
    private static async Task QuietAsync(BenchPage page, List<IWebSocketFrame> sent, List<int> received)
    {
        var before = -1;
        while (before != Copy(sent).Count + Copy(received).Count)
        {
            before = Copy(sent).Count + Copy(received).Count;
            await page.Page.EvaluateAsync("() => new Promise(done => setTimeout(done, 1000))");
        }
    }

    private static void Add<T>(List<T> list, T one)
    {
        lock (list)
        {
            list.Add(one);
        }
    }

    private static void Clear<T>(List<T> list)
    {
        lock (list)
        {
            list.Clear();
        }
    }

    private static List<T> Copy<T>(List<T> list)
    {
        lock (list)
        {
            return [.. list];
        }
    }

    private async Task<IEnumerable<Figure>> AnnouncementsAsync()
    {
        var page = await PageAsync(Server.Address);
        await page.BeginAsync("Announcements", Side, 2);
        await page.Page.EvaluateAsync("""
            () => {
              bench.watch('cursor', '[data-motif]', { attributes: true, attributeFilter: ['aria-activedescendant'] });
              bench.watch('mark', '[data-say]', { childList: true, characterData: true, subtree: true });
              bench.watch('findings', '.checks [role=status]', { childList: true, characterData: true, subtree: true });
            }
            """);
        await page.Stage.FocusAsync();
        var times = IsTry ? 3 : 40;
        var findings = new List<double>();
        for (var time = 0; time < times; time++)
        {
            // a row that is over all along never interlaces
            await PressAsync(page, "Shift+ ");
            findings.AddRange(await WaitsAsync(page, "findings", "o"));
            findings.AddRange(await WaitsAsync(page, "findings", "Control+z"));
        }

        await page.SavedAsync();
        await page.SlowAsync(Slow);
        var (cursor, mark) = (new List<double>(), new List<double>());
        for (var time = 0; time < times; time++)
        {
            cursor.AddRange(await WaitsAsync(page, "cursor", time % 2 == 0 ? "ArrowRight" : "ArrowUp"));
            await PressAsync(page, "Escape");
            await page.Page.EvaluateAsync("() => new Promise(done => setTimeout(done, 200))");
            mark.AddRange(await WaitsAsync(page, "mark", " "));
        }

        await page.Page.EvaluateAsync("() => { bench.told.mark.times = []; }");
        for (var time = 0; time < 2 * times; time++)
        {
            await page.Page.Keyboard.PressAsync(time % 2 == 0 ? " " : "ArrowRight");
        }

        var told = await page.Page.EvaluateAsync<double[]>("() => bench.told.mark.times");
        var most = told.Max(one => told.Count(other => other >= one && other < one + 1000));
        await page.Page.Context.CloseAsync();
        return
        [
            new(DrawingTargets.Class, DrawingTargets.CursorTold, Figure.P95(cursor), "ms", cursor.Count),
            new(DrawingTargets.Class, DrawingTargets.MarkTold, Figure.P95(mark), "ms", mark.Count),
            new(DrawingTargets.Class, DrawingTargets.FindingTold, Figure.P95(findings), "ms", findings.Count),
            new(DrawingTargets.Class, DrawingTargets.MostTold, most, "announcements", told.Length),
        ];
    }

    private static Task PressAsync(BenchPage page, string key) => page.Page.Keyboard.PressAsync(key);

    private static async Task<double[]> WaitsAsync(BenchPage page, string what, string key)
    {
        await page.Page.EvaluateAsync("what => { bench.told[what].waits = []; }", what);
        await PressAsync(page, key);
        await page.Page.WaitForFunctionAsync("what => bench.told[what].waits.length > 0", what);
        return await page.Page.EvaluateAsync<double[]>("what => bench.told[what].waits.slice(0, 1)", what);
    }

    private static int FreePort()
    {
        using var door = new TcpListener(IPAddress.Loopback, 0);
        door.Start();
        return ((IPEndPoint)door.LocalEndpoint).Port;
    }
}
