using BenchmarkDotNet.Attributes;
using PatternShop.Weave;

namespace PatternShop.Benchmarks;

/// <summary>
/// Everything that one edit derives anew, from scratch: weaving order, cells and the shortest writing of every distinct row; and with
/// them all findings, symmetries and ways to mirror. Cells
/// without order over the whole width are the worst that can be; a motif that repeats is the usual piece.
/// </summary>
public class PieceBenchmarks
{
    private PatternDocument _scattered = Document(BenchmarkCharts.Scattered(4, 4), 1);
    private PatternDocument _repeated = Document(BenchmarkCharts.Scattered(4, 4), 1);

    [Params("100 × 100", "400 × 600", "1000 × 1000")]
    public string Size { get; set; } = "";

    [GlobalSetup]
    public void Make()
    {
        var (rows, ends) = Size switch { "100 × 100" => (100, 100), "400 × 600" => (400, 600), _ => (1000, 1000) };
        _scattered = Document(BenchmarkCharts.Scattered(rows, ends), 1);
        _repeated = Document(BenchmarkCharts.Scattered(rows, ends / 20), 20);
    }

    [Benchmark(Baseline = true, Description = "readings and directions, cells without order")]
    public int Scattered() => Piece.Of(_scattered).Readings.Count;

    [Benchmark(Description = "readings and directions, a motif twenty times across")]
    public int Repeated() => Piece.Of(_repeated).Readings.Count;

    [Benchmark(Description = "all of it, cells without order")]
    public int EverythingScattered() => Everything(_scattered);

    [Benchmark(Description = "all of it, a motif twenty times across")]
    public int EverythingRepeated() => Everything(_repeated);

    private static int Everything(PatternDocument document)
    {
        var piece = Piece.Of(document);
        var symmetry = Symmetry.Of(document.Motif);
        return piece.Readings.Count + Checks.Of(piece).Count + Mirroring.Fewest(document.Motif).Count + (symmetry is null ? 0 : 1);
    }

    private static PatternDocument Document(BitGrid motif, int repeats) => new PatternDocument(
        "Benchmark", "en", "", "", motif,
        new WidthPlan(repeats, 0, 0, null),
        new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, motif.Rows, 1)]),
        new Gauge(new Density(4, DensityUnit.PerInch), new Density(4, DensityUnit.PerInch)),
        GlyphStyle.Cells);
}
