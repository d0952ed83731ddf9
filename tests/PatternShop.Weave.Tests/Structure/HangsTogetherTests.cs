using CsCheck;
using PatternShop.Tests.Shared;
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

    [Fact]
    public void The_test_agrees_with_strong_connection_and_names_threads_that_lift_off()
    {
        var apart = 0;
        var all = 0;
        Gen.Frequency((1, DocumentGen.Motifs(9, 9)), (1, Layered)).Sample(
            motif =>
            {
                var layer = HangsTogether.LooseLayer(motif);
                Interlocked.Increment(ref all);
                Interlocked.Add(ref apart, layer is null ? 0 : 1);
                Assert.Equal(StronglyConnected(motif), layer is null);
                if (layer is not null)
                {
                    AssertLiftsOff(motif, layer);
                }
            },
            iter: Effort.Of(20_000, 100_000));
        Assert.True(apart * 3 >= all, $"{apart} of {all} fall apart");
        Assert.True(apart < all);
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
    // thread can be reached from every other.
    private static bool StronglyConnected(BitGrid motif) => Reaches(motif, forwards: true) && Reaches(motif, forwards: false);

    private static bool Reaches(BitGrid motif, bool forwards)
    {
        var seen = new HashSet<int> { 0 };
        var todo = new Stack<int>([0]);
        while (todo.TryPop(out var thread))
        {
            var isRow = thread < motif.Rows;
            for (var other = isRow ? motif.Rows : 0; other < (isRow ? motif.Rows + motif.Columns : motif.Rows); other++)
            {
                var weftOver = motif[isRow ? thread : other, (isRow ? other : thread) - motif.Rows];
                if ((weftOver == isRow) == forwards && seen.Add(other))
                {
                    todo.Push(other);
                }
            }
        }

        return seen.Count == motif.Rows + motif.Columns;
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
