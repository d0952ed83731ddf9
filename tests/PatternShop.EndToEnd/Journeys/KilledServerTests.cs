using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>
/// What is drawn is kept, whatever happens: fast strokes without gaps, and a server that is ended as by kill -9 again and again while
/// two windows draw. Lost connections are expected here, so faults of the windows are not judged.
/// </summary>
public sealed class KilledServerTests(Stage stage, MakerBench bench) : IClassFixture<MakerBench>, IAsyncLifetime
{
    private const int Rows = 16;
    private const int Ends = 24;
    private const int AtOnce = 50;

    // the random waits are up to that many milliseconds, far longer than a stroke takes to be saved
    private const int LongestWait = 200;

    private static readonly bool IsFull = Environment.GetEnvironmentVariable("PATTERNSHOP_EFFORT") == "full";
    // the clock of the wall can be believed where nothing else runs
    private static readonly bool IsAlone = IsFull && Environment.GetEnvironmentVariable("PATTERNSHOP_ALONE")?.Contains(nameof(KilledServerTests), StringComparison.Ordinal) == true;
    private static readonly int Kills = IsFull ? 200 : 25;
    private static readonly int Strokes = IsFull ? 10_000 : 300;
    private static readonly int Steps = IsFull ? 500 : 20;
    private static readonly TimeSpan Most = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(50);

    private readonly List<Visit> _visits = [];

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public async ValueTask DisposeAsync()
    {
        foreach (var visit in _visits)
        {
            await visit.DisposeAsync();
        }
    }

    [Fact]
    public async Task Fast_strokes_have_no_gap_and_both_ends_show_the_same()
    {
        var window = await OpenAsync("Scribbles");
        for (var drawn = 0; drawn < Strokes; drawn += AtOnce)
        {
            Assert.Empty(await window.Script.ScribblesAsync(AtOnce, Rows, Ends, drawn));
            await window.Editor.SavedAsync();
        }

        var seen = await window.Script.SeenAsync(Rows, Ends);
        Assert.InRange(seen.Sum(row => row.Count(cell => cell == 'x')), Rows, Rows * (Ends - 1));
        await SameAsync(window, seen, "at the end");
    }

    [Fact]
    public async Task Every_step_can_be_undone_and_brought_back_by_a_page_that_was_loaded_anew()
    {
        var window = await OpenAsync("Back and forth");
        var (page, editor) = (window.Visit.Page, window.Editor);
        var blank = await editor.PictureAsync();
        // as a page that is gone leaves them behind: each turns one cell over
        await page.EvaluateAsync("""
            ({ steps, rows, ends }) => {
              const id = location.pathname.split('/').pop();
              for (let step = 0; step < steps; step++) {
                const [row, end, over] = [step % rows, Math.floor(step / rows) % ends, Math.floor(step / rows / ends) % 2 === 0];
                const text = `${rows.toString(36)}.${ends.toString(36)} ${over ? 'o' : 'u'}${row.toString(36)}:${end.toString(36)}`;
                localStorage.setItem(`patternshop:stroke:${id}:gone:${step + 1}`, JSON.stringify({ client: 'gone', sequence: step + 1, text, cells: 1 }));
              }
            }
            """, new { steps = Steps, rows = Rows, ends = Ends });
        await ReloadAsync();
        await page.WaitForFunctionAsync("() => localStorage.length === 0", null, new PageWaitForFunctionOptions { Timeout = (float)Patience.TotalMilliseconds });
        var drawn = await editor.PictureAsync();
        Assert.NotEqual(blank, drawn);
        await ReloadAsync();
        Assert.Equal(drawn, await editor.PictureAsync());
        await PressAsync("Control+z", "Undo");
        Assert.Equal(blank, await editor.PictureAsync());
        await ReloadAsync();
        await PressAsync("Control+y", "Redo");
        Assert.Equal(drawn, await editor.PictureAsync());

        async Task ReloadAsync()
        {
            await page.ReloadAsync();
            await editor.SavedAsync();
        }

        // the step that is named last is the last one: then there is none left
        async Task PressAsync(string key, string button)
        {
            for (var step = 0; step < Steps; step++)
            {
                await editor.PressAsync(key);
            }

            await Assertions.Expect(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = button, Exact = true })).ToBeDisabledAsync(new LocatorAssertionsToBeDisabledOptions { Timeout = (float)Patience.TotalMilliseconds });
            await editor.SavedAsync();
        }
    }

    /// <summary>
    /// Each kill comes right when one window says "saved", and finds the other one anywhere in its drawing: the moment at which the first
    /// one draws is random, and neither knows of the other. So one kill proves both.
    /// </summary>
    [Fact]
    public async Task What_was_called_saved_and_every_finished_stroke_is_there_after_every_kill()
    {
        var (calm, busy) = (await OpenAsync("Calm water"), await OpenAsync("Storm"));
        foreach (var window in new[] { calm, busy })
        {
            await window.Script.NoteAsync(Rows, Ends);
        }

        var longest = TimeSpan.Zero;
        for (var kill = 1; kill <= Kills; kill++)
        {
            await busy.Script.GoAsync(kill);
            await calm.Script.StrokeAndSavedAsync(kill * 7919 % LongestWait);
            await bench.StartAgainAsync();
            var (wall, own) = await BackAsync(calm, busy);
            longest = wall > longest ? wall : longest;
            Assert.True((IsAlone ? wall : own) <= Most, FormattableString.Invariant($"after kill {kill} the pages were back after {wall.TotalSeconds:0.0} s"));
            foreach (var window in new[] { calm, busy })
            {
                await window.Editor.SavedAsync();
                await SameAsync(window, await window.Script.NotedAsync(), FormattableString.Invariant($"after kill {kill}"));
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"longest until both pages were back: {longest.TotalSeconds:0.0} s"));
    }

    // How long it takes from when the server is well again until both pages were loaded anew and can be drawn on, and that less what other programs took of the machine.
    private async Task<(TimeSpan Wall, TimeSpan Own)> BackAsync(params Window[] windows)
    {
        var (begin, processors, worked) = (TimeProvider.System.GetTimestamp(), new Processors(), bench.Server.Worked);
        foreach (var window in windows)
        {
            await window.Visit.Page.WaitForFunctionAsync(
                "() => !window.beforeTheKill && document.querySelector('[data-motif] canvas') && document.querySelector('table.rows tbody tr')",
                null,
                new PageWaitForFunctionOptions { Timeout = (float)Patience.TotalMilliseconds });
        }

        var wall = TimeProvider.System.GetElapsedTime(begin);
        foreach (var window in windows)
        {
            await window.MarkAsync();
        }

        return (wall, wall * (1 - processors.TakenByOthers(wall, bench.Server.Worked - worked)));
    }

    // the words follow what is saved
    private static async Task SameAsync(Window window, string[] chart, string when)
    {
        await Assertions.Expect(new PatternPage(window.Visit).RowTable.Locator("tbody tr")).ToHaveCountAsync(Rows);
        using var patience = new CancellationTokenSource(Patience);
        using var beat = new PeriodicTimer(Beat);
        IReadOnlyList<string> differences;
        while ((differences = WrittenRow.Differences(await window.Editor.RowsAsync(), Woven(chart))).Count > 0 && !patience.IsCancellationRequested)
        {
            await beat.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }

        Assert.True(differences.Count == 0, $"{when}: {string.Join("; ", differences)}");
    }

    private static IReadOnlyList<WovenRow> Woven(string[] chart) => WeavingOrder.Of(JsonSerializer.SerializeToElement(new
    {
        chart,
        repeats = 1,
        offset = 0,
        balance = 0,
        floating = 1,
        edges = "alike",
        firstEdge = "under",
        starts = new[] { "right" },
        firstPlain = "under",
        rowPlan = new object[] { new { step = "chart", first = 1, last = Rows, weft = 1 } },
    }));

    private async Task<Window> OpenAsync(string title)
    {
        var visit = await Visit.OpenAsync(stage.Browser, bench.Server.Address, Reader.Desk with { Height = 1000 });
        _visits.Add(visit);
        await bench.EnterAsync(visit);
        var window = new Window(visit, new EditorPage(visit), new DrawingScript(visit.Page));
        await window.Script.BringAsync();
        await window.Editor.BeginAsync(title, Ends, Rows);
        await window.MarkAsync();
        return window;
    }

    private sealed record Window(Visit Visit, EditorPage Editor, DrawingScript Script)
    {
        // a mark that does not outlive the page, so that its going shows that the page was loaded anew
        public Task MarkAsync() => Visit.Page.EvaluateAsync("() => { window.beforeTheKill = true; }");
    }
}
