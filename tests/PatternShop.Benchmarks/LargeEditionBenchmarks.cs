using BenchmarkDotNet.Attributes;
using PatternShop.Print;
using PatternShop.Weave;

namespace PatternShop.Benchmarks;

/// <summary>A complete A4 edition of cells without order, from its document; every row differs and is long.</summary>
public class LargeEditionBenchmarks
{
    private PatternDocument _document = BenchmarkCharts.Document(BenchmarkCharts.Scattered(4, 4));

    [Params("400 × 600")]
    public string Size { get; set; } = "";

    [GlobalSetup]
    public void Make() => _document = BenchmarkCharts.Document(BenchmarkCharts.Scattered(600, 400));

    [Benchmark(Baseline = true, Description = "a complete A4 edition")]
    public int Edition() => Made.Note(this, Size, Printable.Make(Piece.Of(_document), VersionLine.NotIssued, Print.Paper.A4, Wording.English).Length);
}
