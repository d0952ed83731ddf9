using BenchmarkDotNet.Attributes;
using PatternShop.Weave;

namespace PatternShop.Benchmarks;

/// <summary>
/// Findings of a piece with limits, floating selvedges and repeated rows, so that every check has something to look at; cells without order are the
/// worst that can be.
/// </summary>
public class ChecksBenchmarks
{
    private Piece _piece = Piece.Of(Document(BenchmarkCharts.Scattered(4, 4)));

    [Params("100 × 100", "400 × 600", "1000 × 1000")]
    public string Size { get; set; } = "";

    [GlobalSetup]
    public void Make()
    {
        var (rows, ends) = Size switch { "100 × 100" => (100, 100), "400 × 600" => (600, 400), _ => (1000, 1000) };
        _piece = Piece.Of(Document(BenchmarkCharts.Scattered(rows / 2, ends)));
    }

    [Benchmark(Baseline = true, Description = "findings")]
    public int Findings() => Checks.Of(_piece).Count;

    [Benchmark(Description = "remedies of all findings")]
    public int Mending() => Remedies.Of(_piece).Count;

    // half the rows, woven twice
    private static PatternDocument Document(BitGrid motif) => new PatternDocument(
        "Benchmark", "en", "", "", motif,
        new WidthPlan(1, 0, 0, new FloatingSelvedges(EdgeWay.Alike, Stroke.Under)),
        new RowPlan([new Weft(Side.Left)], Stroke.Under, [new Repeat(2, [new ChartRows(1, motif.Rows, 1)])]),
        new Gauge(new Density(4, DensityUnit.PerInch), new Density(4, DensityUnit.PerInch)),
        GlyphStyle.Cells) with { Limits = new Limits(3, null) };
}
