using CsCheck;
using PatternShop.Tests.Shared;
using QuikGraph;
using QuikGraph.Algorithms;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class HangsTogetherTests
{
    /// <summary>
    /// Rows, ends; motifs in which every thread interlaces (OEIS A283654); how many of these hang together (computed from the definition
    /// by a separate program: all but 144 of the 4 × 4, which are two plain layers each).
    /// </summary>
    public static TheoryData<int, int, int, int> Counts => new()
    {
        { 2, 2, 2, 2 }, { 2, 3, 6, 6 }, { 2, 4, 14, 14 }, { 3, 3, 102, 102 }, { 3, 4, 906, 906 }, { 3, 5, 6510, 6510 }, { 4, 4, 22874, 22730 },
    };

    [Theory]
    [MemberData(nameof(Counts))]
    public void Exhaustive_counts_agree(int rows, int ends, int interlaced, int together)
    {
        var (interlace, hang) = (0, 0);
        for (var bits = 0; bits < 1 << (rows * ends); bits++)
        {
            var cells = bits;
            var motif = BitGrid.Create(rows, ends, (row, end) => (cells >> ((row * ends) + end) & 1) != 0);
            if (Interlaces(motif) && Interlaces(motif.Transpose()))
            {
                interlace++;
                hang += HangsTogether.Test(motif) ? 1 : 0;
            }
            else
            {
                Assert.False(HangsTogether.Test(motif));
            }
        }

        Assert.Equal((interlaced, together), (interlace, hang));
    }

    [Fact]
    public void Two_layers_lift_off_and_one_stitch_between_them_holds()
    {
        // computed, 1 = the end lies over the row: 1000/1110/0010/1011 falls apart, rows 1 and 3 with ends 1 and 3
        var motif = FromEndsOver("1000", "1110", "0010", "1011");
        var layer = HangsTogether.LooseLayer(motif);
        Assert.Equal(new Layer([0, 2], [0, 2]), layer);
        for (var row = 0; row < 4; row++)
        {
            for (var end = 0; end < 4; end++)
            {
                var between = (row % 2 == 0) != (end % 2 == 0);
                Assert.Equal(between, HangsTogether.Test(motif.With(row, end, !motif[row, end])));
            }
        }

        Assert.True(HangsTogether.Test(FromEndsOver("1100", "0110", "0011", "1001")));
    }

    // Three ways agree on at least 100,000 generated charts, of which at least a third fall apart.
    [Fact]
    public void Three_ways_agree_and_the_threads_named_lift_off()
    {
        var apart = 0;
        var all = 0;
        Gen.Frequency((2, DocumentGen.Motifs(9, 9).Where(motif => motif is { Rows: > 3, Columns: > 3 })), (1, DocumentGen.Motifs(9, 9)), (1, Layered)).SampleFixed(
            motif =>
            {
                var layer = HangsTogether.LooseLayer(motif);
                Interlocked.Increment(ref all);
                Interlocked.Add(ref apart, layer is null ? 0 : 1);
                Assert.Equal(IsStronglyConnected(motif), layer is null);
                Assert.Equal(BySums(motif), layer is null);
                if (layer is not null)
                {
                    AssertLiftsOff(motif, layer);
                }
            },
            Effort.Of(100_000, 1_000_000));
        Assert.True(all >= 100_000, $"{all} charts");
        Assert.True(apart * 3 >= all, $"{apart} of {all} fall apart");
        Assert.True((all - apart) * 4 >= all, $"{all - apart} of {all} hang together");
    }

    [Fact]
    public void Each_way_sees_a_layer_that_is_sewn_on()
    {
        var apart = FromEndsOver("1000", "1110", "0010", "1011");
        var sewn = apart.With(0, 1, !apart[0, 1]);
        Assert.Equal((false, false, false), (IsStronglyConnected(apart), BySums(apart), HangsTogether.Test(apart)));
        Assert.Equal((true, true, true), (IsStronglyConnected(sewn), BySums(sewn), HangsTogether.Test(sewn)));
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertLiftsOff(sewn, new Layer([0, 2], [0, 2])));
    }

    private static void AssertLiftsOff(BitGrid motif, Layer layer)
    {
        Assert.True(layer.Rows.Count + layer.Ends.Count > 0);
        Assert.True(layer.Rows.Count + layer.Ends.Count < motif.Rows + motif.Columns);
        for (var row = 0; row < motif.Rows; row++)
        {
            for (var end = 0; end < motif.Columns; end++)
            {
                var (weft, warp) = (layer.Rows.Contains(row), layer.Ends.Contains(end));
                Assert.True(weft == warp || motif[row, end] == weft, $"row {row}, end {end}");
            }
        }
    }

    // C. R. J. Clapham 1980: an arrow from the upper to the lower thread at every crossing; the cloth hangs together exactly when every
    // thread can be reached from every other. The components are those of a general graph library.
    private static bool IsStronglyConnected(BitGrid motif)
    {
        var graph = new AdjacencyGraph<int, SEdge<int>>(allowParallelEdges: true);
        graph.AddVertexRange(Enumerable.Range(0, motif.Rows + motif.Columns));
        for (var row = 0; row < motif.Rows; row++)
        {
            for (var end = 0; end < motif.Columns; end++)
            {
                graph.AddEdge(motif[row, end] ? new SEdge<int>(row, motif.Rows + end) : new SEdge<int>(motif.Rows + end, row));
            }
        }

        return graph.StronglyConnectedComponents(new Dictionary<int, int>()) == 1;
    }

    // The sum form as published, in its own convention (1 = the end lies over the row): m rows' sums ascending r, n ends' sums descending
    // c; it falls apart exactly when the q largest c less the p smallest r are (m - p) q for some (p, q) other than (0, 0) and (m, n).
    private static bool BySums(BitGrid motif)
    {
        var (m, n) = (motif.Rows, motif.Columns);
        var r = Enumerable.Range(0, m).Select(row => Enumerable.Range(0, n).Count(end => !motif[row, end])).Order().ToList();
        var c = Enumerable.Range(0, n).Select(end => Enumerable.Range(0, m).Count(row => !motif[row, end])).OrderDescending().ToList();
        for (var (p, rows) = (0, 0); p <= m; rows += p < m ? r[p] : 0, p++)
        {
            for (var (q, ends) = (0, 0); q <= n; ends += q < n ? c[q] : 0, q++)
            {
                if (ends - rows == (m - p) * q && (p, q) != (0, 0) && (p, q) != (m, n))
                {
                    return false;
                }
            }
        }

        return true;
    }

    // Two sets of threads of which one lies on the other wherever they cross.
    private static Gen<BitGrid> Layered { get; } =
        from motif in DocumentGen.Motifs(9, 9)
        from rows in Gen.Bool.Array[motif.Rows]
        from ends in Gen.Bool.Array[motif.Columns]
        select BitGrid.Create(motif.Rows, motif.Columns, (row, end) => rows[row] == ends[end] ? motif[row, end] : rows[row]);

    private static bool Interlaces(BitGrid motif) => Enumerable.Range(0, motif.Rows)
        .All(row => Enumerable.Range(0, motif.Columns).Select(end => motif[row, end]).Distinct().Count() == 2);

    // The published convention is the opposite of a chart's: there 1 is an end that lies over the row.
    private static BitGrid FromEndsOver(params string[] rows) => BitGrid.Create(rows.Length, rows[0].Length, (row, end) => rows[row][end] == '0');
}
