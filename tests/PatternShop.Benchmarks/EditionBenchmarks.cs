using BenchmarkDotNet.Attributes;
using PatternShop.Print;
using PatternShop.Tests.Shared;
using PatternShop.Weave;

namespace PatternShop.Benchmarks;

/// <summary>
/// A complete A4 edition of a small piece (Hazel diamonds: 23 ends, 20 repeated rows and two more) from its document, against headless Chromium, already running,
/// that prints the pattern's page, already loaded from the app.
/// </summary>
public class EditionBenchmarks
{
    private static readonly VersionLine Version = new(2, new DateOnly(2026, 11, 24), "https://weave.example.org/p/0123456789/hazel-diamonds/v/2")
    {
        Copy = new Copy("ABCD-1234", "https://weave.example.org/c/ABCD1234"),
        Maker = "Tansy Lane Weaving Room",
    };

    private PatternDocument _document = BenchmarkCharts.Document(BenchmarkCharts.Scattered(4, 4));
    private PrintingBrowser? _browser;

    [Params("23 × 20")]
    public string Size { get; set; } = "";

    [GlobalSetup]
    public async Task StartAsync()
    {
        const string Sample = "hazel-diamonds";
        _document = ((ReadResult.Read)PatternReader.Read(await File.ReadAllBytesAsync(Checkout.Path($"tests/Shared/Samples/{Sample}.json")))).Document;
        _browser = await PrintingBrowser.ShowAsync($"/samples/{Sample}", _document.Title);
    }

    [GlobalCleanup]
    public async Task EndAsync() => await (_browser?.DisposeAsync() ?? ValueTask.CompletedTask);

    [Benchmark(Baseline = true, Description = "headless Chromium prints the page")]
    public async Task<int> ChromiumAsync() => Made.Note(this, Size, (await _browser!.PrintAsync()).Length);

    [Benchmark(Description = "a complete A4 edition (ours)")]
    public int Ours() => Made.Note(this, Size, Printable.Make(Piece.Of(_document), Version, Print.Paper.A4, Wording.English).Length);
}
