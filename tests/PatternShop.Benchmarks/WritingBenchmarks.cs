using BenchmarkDotNet.Attributes;
using PatternShop.Weave;

namespace PatternShop.Benchmarks;

/// <summary>The shortest writing of rows: runs without order, a motif again and again, and a row that repeats at many lengths at once.</summary>
public class WritingBenchmarks
{
    private Sequence<Weave.Run> _scattered = [];
    private Sequence<Weave.Run> _repeated = [];
    private Sequence<Weave.Run> _hardest = [];

    [Params(60, 400)]
    public int Runs { get; set; }

    [GlobalSetup]
    public void Make()
    {
        var cells = BenchmarkCharts.Scattered(1, 4 * Runs);
        var counts = Weave.Runs.Of(cells, 0, Side.Left).Select(run => run.Count).ToList();
        _scattered = Row(at => counts[at]);
        _repeated = Row(at => counts[at % (Runs / 4)]);

        // long and short by the words of Fibonacci: each is the one before and the one before that
        var (word, before) = ("12", "1");
        while (word.Length < Runs)
        {
            (word, before) = (word + before, word);
        }

        _hardest = Row(at => word[at] - '0');
    }

    [Benchmark(Baseline = true, Description = "without order")]
    public Writing WithoutOrder() => ShortestWriting.Of(_scattered, 8);

    [Benchmark(Description = "a motif four times")]
    public Writing Repeated() => ShortestWriting.Of(_repeated, 8);

    [Benchmark(Description = "repeating at many lengths")]
    public Writing Hardest() => ShortestWriting.Of(_hardest, 8);

    private Sequence<Weave.Run> Row(Func<int, int> count) =>
        Enumerable.Range(0, Runs).Select(at => new Weave.Run(at % 2 == 0 ? Stroke.Over : Stroke.Under, count(at))).ToSequence();
}
