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
    private readonly CutLine _line = new(bench.Server);
    private Visit? _maker;

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
        await Assertions.Expect(_maker.Page.Locator("[data-saving]")).ToHaveTextAsync("not saved yet: no connection, kept in this browser");
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
        var (drawn, state, stored) = (await editor.PictureAsync(), await StateAsync(), await _maker!.Page.Locator("td.runs").First.InnerTextAsync());
        Assert.NotEqual(blank, drawn);
        Assert.Equal(("saving…", "under 8"), (state, stored));
        await editor.SavedAsync();
        Assert.Equal(drawn, await editor.PictureAsync());
        await Assertions.Expect(_maker.Page.Locator("td.runs").First).ToHaveTextAsync("over 1, under 7");
    }

    private Task<string> StateAsync() => _maker!.Page.Locator("[data-saving]").InnerTextAsync();

    private async Task<EditorPage> BeginAsync()
    {
        await bench.EnterAsync(_maker!);
        var editor = new EditorPage(_maker!);
        await editor.BeginAsync("Long line", Size, Size);
        await editor.PlainEdgesAsync();
        return editor;
    }
}
