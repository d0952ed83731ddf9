using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>
/// "Saved" is true: the server is ended as by kill -9 right when the page says so, again and again, and what was drawn is
/// there; the page comes back by itself. Lost connections are expected here, so faults of the window are not judged.
/// </summary>
public sealed class KilledServerTests(Stage stage, MakerBench bench) : IClassFixture<MakerBench>, IAsyncLifetime
{
    private const int Size = 8;

    // PATTERNSHOP_EFFORT=full is the long run
    private static readonly int Kills = Environment.GetEnvironmentVariable("PATTERNSHOP_EFFORT") == "full" ? 200 : 25;

    private readonly bool[,] _over = new bool[Size, Size];
    private Visit? _maker;

    public async ValueTask InitializeAsync() => _maker = await Visit.OpenAsync(stage.Browser, bench.Server.Address, Reader.Desk);

    public ValueTask DisposeAsync() => _maker!.DisposeAsync();

    [Fact]
    public async Task What_was_called_saved_is_there_after_every_kill()
    {
        await bench.EnterAsync(_maker!);
        var editor = new EditorPage(_maker!);
        await editor.BeginAsync("Storm shelter", Size, Size);
        for (var kill = 0; kill < Kills; kill++)
        {
            var (row, end) = ((kill * 3 % Size) + 1, (kill * 5 % Size) + 1);
            await MarkAsync();
            await editor.DragAsync(Size, Size, (row, end));
            _over[row - 1, end - 1] = !_over[row - 1, end - 1];
            await editor.SavedAsync();
            await bench.StartAgainAsync();
            await BackAsync();
            await editor.SavedAsync();
            var rows = await WaitForRowsAsync(editor);
            Assert.True(rows.Count == 0, $"after kill {kill + 1}: {string.Join("; ", rows)}");
        }
    }

    // a mark that does not outlive the page, so that its going shows that the page was loaded anew
    private Task MarkAsync() => _maker!.Page.EvaluateAsync("() => { window.beforeTheKill = true; }");

    private Task BackAsync() => _maker!.Page.WaitForFunctionAsync(
        "() => !window.beforeTheKill && document.querySelector('table.rows tbody tr')", null, new PageWaitForFunctionOptions { Timeout = 60_000 });

    private async Task<IReadOnlyList<string>> WaitForRowsAsync(EditorPage editor)
    {
        await Assertions.Expect(new PatternPage(_maker!).RowTable.Locator("tbody tr")).ToHaveCountAsync(Size);
        return WrittenRow.Differences(await editor.RowsAsync(), WeavingOrder.Of(JsonSerializer.SerializeToElement(new
        {
            chart = Enumerable.Range(0, Size).Select(row => string.Concat(Enumerable.Range(0, Size).Select(end => _over[row, end] ? 'x' : '.'))),
            repeats = 1,
            offset = 0,
            balance = 0,
            floating = 1,
            edges = "alike",
            firstEdge = "under",
            starts = new[] { "right" },
            firstPlain = "under",
            rowPlan = new object[] { new { step = "chart", first = 1, last = Size, weft = 1 } },
        })));
    }
}
