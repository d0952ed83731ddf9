using BenchmarkDotNet.Attributes;
using PatternShop.Weave;
using QuikGraph;
using QuikGraph.Algorithms;

namespace PatternShop.Benchmarks;

/// <summary>
/// Whether cloth hangs together: strong connection of the threads in a general graph library, its graph built from the chart, against the
/// sums of overs. The chart is cloth that hangs together with rows and ends that differ, so that every sum is looked at.
/// </summary>
public class HangsTogetherBenchmarks
{
    private BitGrid _motif = BitGrid.Create(1, 1, (_, _) => true);
    private AdjacencyGraph<int, SEdge<int>> _graph = new();

    [Params(100, 1000)]
    public int Side { get; set; }

    [GlobalSetup]
    public void Make()
    {
        _motif = BenchmarkCharts.Scattered(Side, Side);
        _graph = Graph(_motif);
    }

    [Benchmark(Baseline = true, Description = "graph library")]
    public int GraphLibrary() => Graph(_motif).StronglyConnectedComponents(new Dictionary<int, int>());

    [Benchmark(Description = "graph library, graph made before")]
    public int GraphMadeBefore() => _graph.StronglyConnectedComponents(new Dictionary<int, int>());

    [Benchmark(Description = "ours")]
    public bool Ours() => HangsTogether.Test(_motif);

    private static AdjacencyGraph<int, SEdge<int>> Graph(BitGrid motif)
    {
        var graph = new AdjacencyGraph<int, SEdge<int>>(allowParallelEdges: true, motif.Rows + motif.Columns, (motif.Rows + motif.Columns) / 2);
        graph.AddVertexRange(Enumerable.Range(0, motif.Rows + motif.Columns));
        for (var row = 0; row < motif.Rows; row++)
        {
            for (var end = 0; end < motif.Columns; end++)
            {
                graph.AddEdge(motif[row, end] ? new SEdge<int>(row, motif.Rows + end) : new SEdge<int>(motif.Rows + end, row));
            }
        }

        return graph;
    }
}
