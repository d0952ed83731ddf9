using BenchmarkDotNet.Attributes;
using PatternShop.Weave;

namespace PatternShop.Benchmarks;

/// <summary>Periods, mirrors and half turns of a large twill, whose rows all differ and all are the same ring of cells.</summary>
public class SymmetryBenchmarks
{
    private BitGrid _motif = BitGrid.Create(1, 1, (_, _) => true);

    [Params(100, 1000)]
    public int Side { get; set; }

    [GlobalSetup]
    public void Make() => _motif = BenchmarkCharts.Twill(Side);

    [Benchmark(Baseline = true, Description = "symmetries")]
    public Symmetry Symmetries() => Symmetry.Of(_motif);

    [Benchmark(Description = "periods")]
    public int SmallestPeriods() => Periods.Across(_motif).Partial + Periods.Along(_motif).Partial;

    [Benchmark(Description = "ways to mirror")]
    public int WaysToMirror() => Mirroring.EveryOffset(_motif).Count;
}
