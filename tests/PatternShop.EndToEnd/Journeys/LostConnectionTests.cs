using System.Globalization;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>
/// Drawing goes on over a long line and without one, and nothing of it is lost. Lost connections are expected here, so
/// faults of the window are not judged.
/// </summary>
public sealed class LostConnectionTests(Stage stage, MakerBench bench) : IClassFixture<MakerBench>, IAsyncLifetime
{
    private const int Size = 8;

    // a browser that cannot show what another look of the cells changes: the server gives such a page up
    private const string Fail = """
        () => {
          const field = [...document.querySelectorAll('[data-fields] label')].find(label => label.textContent.includes('Cells drawn as')).control;
          field.value = field.value === '0' ? '1' : '0';
          Element.prototype.setAttribute = () => { throw new Error('on purpose'); };
          field.dispatchEvent(new Event('change', { bubbles: true }));
        }
        """;

    private readonly CutLine _line = new(bench.Server);
    private Visit? _maker;

    private ILocator Saving => _maker!.Page.Locator("[data-saving]");

    private ILocator Stopped => _maker!.Page.Locator("[data-stopped]");

    public async ValueTask InitializeAsync() => _maker = await Visit.OpenAsync(stage.Browser, _line.Address, Reader.Desk);

    public async ValueTask DisposeAsync()
    {
        await _maker!.DisposeAsync();
        await _line.DisposeAsync();
    }

    [Fact]
    public async Task What_is_drawn_and_typed_while_the_line_is_cut_is_there_when_it_is_mended()
    {
        var editor = await BeginAsync();
        await _maker!.Page.EvaluateAsync("() => { window.samePage = true; }");
        await _maker.Page.GetByLabel("Title").FillAsync("Thunder in the hills");
        _line.Cut();
        await Assertions.Expect(Saving).ToHaveTextAsync("not saved yet: no connection, kept in this browser");
        await editor.DragAsync(Size, Size, (1, 1), (1, 5));
        await editor.DragAsync(Size, Size, (1, 5), (1, 5));
        await editor.DragAsync(Size, Size, (2, 8), (2, 6));
        await Assertions.Expect(_maker.Page.Locator("td.runs").First).ToHaveTextAsync("under 8");
        _line.Mend();
        await editor.SavedAsync();
        await Assertions.Expect(_maker.Page.Locator("td.runs").First).ToHaveTextAsync("over 4, under 4");
        await Assertions.Expect(_maker.Page.Locator("td.runs").Nth(1)).ToHaveTextAsync("over 3, under 5");
        await Assertions.Expect(_maker.Page.Locator("h1")).ToHaveTextAsync("Thunder in the hills");
        Assert.True(await _maker.Page.EvaluateAsync<bool>("() => window.samePage === true && localStorage.length === 0"));
    }

    [Fact]
    public async Task A_stroke_shows_at_once_however_long_the_line_is_and_saved_comes_only_from_the_other_end()
    {
        var editor = await BeginAsync();
        var blank = await editor.PictureAsync();
        _line.Delay = TimeSpan.FromSeconds(1);
        await editor.DragAsync(Size, Size, (1, 1), (8, 8));
        var (drawn, state, stored) = (await editor.PictureAsync(), await StateAsync(), (await _maker!.Page.Locator("td.runs").First.TextContentAsync())!.Replace('\u00A0', ' '));
        Assert.NotEqual(blank, drawn);
        Assert.Equal(("saving…", "under 8"), (state, stored));
        await editor.SavedAsync();
        Assert.Equal(drawn, await editor.PictureAsync());
        await Assertions.Expect(_maker.Page.Locator("td.runs").First).ToHaveTextAsync("over 1, under 7");
    }

    [Fact]
    public async Task What_is_drawn_when_the_server_no_longer_knows_the_page_is_there_once_the_page_came_back()
    {
        var editor = await BeginAsync();
        await MarkAsync();
        _line.Cut();
        await Assertions.Expect(Saving).ToHaveTextAsync("no connection: what you draw is kept in this browser");
        await editor.DragAsync(Size, Size, (1, 1), (1, 5));
        await editor.DragAsync(Size, Size, (2, 8), (2, 6));
        await bench.StartAgainAsync();
        _line.Mend();
        await BackAsync();
        await editor.SavedAsync();
        await DrawnAsync("over 5, under 3", "over 3, under 5");
    }

    [Fact]
    public async Task A_page_whose_other_half_failed_on_the_server_comes_back_with_what_was_drawn_since()
    {
        var editor = await BeginAsync();
        await MarkAsync();
        var (asked, answer) = (new TaskCompletionSource(), new TaskCompletionSource());
        await _maker!.Page.RouteAsync("**/studio/patterns/*", async route =>
        {
            asked.TrySetResult();
            await answer.Task;
            await route.ContinueAsync();
        });
        await _maker.Page.EvaluateAsync(Fail);
        await asked.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
        await editor.DragAsync(Size, Size, (1, 1), (1, 5));
        await editor.DragAsync(Size, Size, (2, 8), (2, 6));
        // where it is kept is not said of strokes alone: the change that made the page fail is no text, and may be unanswered
        await Assertions.Expect(Saving).ToContainTextAsync("not saved yet: no connection, kept ");
        await editor.HoldAsync(Size, Size, (3, 4), (3, 8));
        answer.SetResult();
        await BackAsync();
        await _maker.Page.Mouse.UpAsync();
        await editor.SavedAsync();
        await DrawnAsync("over 5, under 3", "over 3, under 5", "under 3, over 5");
        await Assertions.Expect(Stopped).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_page_that_fails_whenever_it_is_opened_waits_says_so_and_is_opened_when_asked()
    {
        var editor = await BeginAsync();
        await _maker!.Page.AddInitScriptAsync($$"""
            sessionStorage.loads = Number(sessionStorage.loads ?? 0) + 1;
            new MutationObserver((_, observer) => {
              if (sessionStorage.well !== 'yes' && document.querySelector('[data-motif] canvas')) {
                observer.disconnect();
                ({{Fail}})();
              }
            }).observe(document, { childList: true, subtree: true });
            """);
        await _maker.Page.ReloadAsync();
        // in one go, since the page is loaded again meanwhile
        await _maker.Page.WaitForFunctionAsync(
            """
            () => {
              const stopped = document.querySelector('[data-stopped]');
              if (!stopped || stopped.hidden) return false;
              Object.assign(sessionStorage, { well: 'yes', words: stopped.innerText, seen: sessionStorage.loads });
              stopped.querySelector('button').click();
              return true;
            }
            """,
            null,
            new PageWaitForFunctionOptions { Timeout = 60_000 });
        await Assertions.Expect(Stopped).ToBeHiddenAsync();
        await editor.SavedAsync();
        await editor.DragAsync(Size, Size, (1, 1), (1, 5));
        await editor.SavedAsync();
        await DrawnAsync("over 5, under 3");
        Assert.StartsWith("The workbench stopped. What was saved is safe", await KeptAsync("words"), StringComparison.Ordinal);
        Assert.InRange(int.Parse(await KeptAsync("seen"), CultureInfo.InvariantCulture), 2, 4);
    }

    // another load of the page
    private Task BackAsync() => _maker!.Page.WaitForFunctionAsync("() => !window.before && document.querySelector('[data-motif] canvas')");

    private Task<string> KeptAsync(string name) => _maker!.Page.EvaluateAsync<string>("name => sessionStorage[name]", name);

    private Task MarkAsync() => _maker!.Page.EvaluateAsync("() => { window.before = true; }");

    private async Task DrawnAsync(params string[] rows)
    {
        foreach (var (at, words) in rows.Index())
        {
            await Assertions.Expect(_maker!.Page.Locator("td.runs").Nth(at)).ToHaveTextAsync(words);
        }

        Assert.Equal(0, await _maker!.Page.EvaluateAsync<int>("() => localStorage.length"));
    }

    private Task<string> StateAsync() => Saving.InnerTextAsync();

    private async Task<EditorPage> BeginAsync()
    {
        await bench.EnterAsync(_maker!);
        var editor = new EditorPage(_maker!);
        await editor.BeginAsync("Long line", Size, Size);
        await editor.PlainEdgesAsync();
        return editor;
    }
}
