using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class FloatLaws
{
    [Fact]
    public void Longest_floats_are_the_longest_stretches_of_the_woven_piece() =>
        Law.OfDocuments(document => Assert.Equal(ByLooking(document), Floats.Longest(Piece.Of(document))));

    [Fact]
    public void A_changed_cell_would_be_seen() => Law.CanFail(document =>
        Assert.Equal(ByLooking(document with { Motif = document.Motif.With(0, 0, !document.Motif[0, 0]) }), Floats.Longest(Piece.Of(document))));

    // By hand from the chart: at end 2, chart rows 5, 6 and 7 and, across the seam, 2 are over: a warp float of 4 rows, 3 elsewhere.
    [Fact]
    public void Rows_2_to_7_of_the_diamond_twice_then_8_to_10_break_at_the_seam()
    {
        static LongestFloats Of(params RowStep[] steps) =>
            Floats.Longest(Piece.Of(Charts.Document(Charts.TenEndDiamond, repeats: 3, balance: 1, steps: steps)));
        var broken = Of(new Repeat(2, [new ChartRows(2, 7, 1)]), new ChartRows(8, 10, 1));
        Assert.Equal(4, Math.Max(broken.WarpOver, broken.WarpUnder));
        Assert.Equal(3, Math.Max(broken.WeftOver, broken.WeftUnder));
        Assert.Equal(3, Of(new ChartRows(2, 7, 1)).Longest);
        Assert.Equal(3, Of(new Repeat(2, [new ChartRows(1, 10, 1)]), new ChartRows(1, 1, 1)).Longest);
    }

    private static LongestFloats ByLooking(PatternDocument document)
    {
        var rows = Oracle.Rows(document);
        var columns = Enumerable.Range(0, rows[0].Over.Count).Select(end => rows.Select(row => row.Over[end]).ToList()).ToList();
        return new LongestFloats(
            rows.Max(row => Longest(row.Over, true)),
            rows.Max(row => Longest(row.Over, false)),
            columns.Max(column => Longest(column, false)),
            columns.Max(column => Longest(column, true)));
    }

    private static int Longest(IReadOnlyList<bool> cells, bool wanted)
    {
        var longest = 0;
        for (var first = 0; first < cells.Count; first++)
        {
            var count = 0;
            while (first + count < cells.Count && cells[first + count] == wanted)
            {
                count++;
            }

            longest = Math.Max(longest, count);
        }

        return longest;
    }
}
