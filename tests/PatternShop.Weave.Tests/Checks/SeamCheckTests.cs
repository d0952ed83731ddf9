using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class SeamCheckTests
{
    private static PatternDocument Woven(params RowStep[] steps) =>
        Charts.Document(Charts.TenEndDiamond, repeats: 2, balance: 1, floating: Charts.AlikeOver, steps: steps);

    // By hand from the chart: at end 2, chart rows 5, 6 and 7 and, across the seam, 2 are over (a float of 4 rows, 3 elsewhere).
    // Common practice, no published source: rows 1-10 as often as wished, then row 1, join.
    [Fact]
    public void Rows_2_to_7_of_the_diamond_do_not_join_and_rows_1_to_10_do()
    {
        var broken = Woven(new Repeat(2, [new ChartRows(2, 7, 1)]), new ChartRows(8, 10, 1));
        var seam = Assert.Single(Found.In<SeamBreaks>(broken));
        Assert.Equal((Weight.Caution, 4, 3, false), (seam.Weight, seam.Across, seam.Elsewhere, seam.RowsAlike));
        Assert.All(seam.Areas, area => Assert.True(area is { FirstRow: <= 6, LastRow: >= 7 } && area.LastRow - area.FirstRow == 3));
        Assert.Empty(Found.In<SeamBreaks>(Woven(new Repeat(2, [new ChartRows(1, 10, 1)]), new ChartRows(1, 1, 1))));
        Assert.Empty(Found.In<SeamBreaks>(Woven(new ChartRows(2, 7, 1), new ChartRows(8, 10, 1))));
    }

    [Fact]
    public void Weaving_the_whole_motif_each_time_mends_it()
    {
        var broken = Woven(new Repeat(2, [new ChartRows(2, 7, 1)]), new ChartRows(8, 10, 1));
        var remedy = Found.FirstRemedy<SeamBreaks>(broken);
        Assert.Equal((MendKind.WholeMotif, 20), (remedy.Edit.Kind, remedy.Aftermath.Rows));
        Assert.Equal([new Repeat(2, [new ChartRows(1, 10, 1)])], Found.After(broken, remedy.Edit).Rows.Steps);
    }

    // The first row is drawn again as the last, so that the figure is whole; repeated, it stands twice.
    [Fact]
    public void A_closing_row_that_is_repeated_with_the_others_is_woven_once_instead()
    {
        var closed = Charts.Document(Charts.TenEndDiamond + "/x.xx...xx.", repeats: 3, balance: 1, floating: Charts.AlikeUnder, steps: [new Repeat(4, [new ChartRows(1, 11, 1)])]);
        var seam = Assert.Single(Found.In<SeamBreaks>(closed));
        Assert.Equal((true, Weight.Note, 3), (seam.RowsAlike, seam.Weight, seam.Count));
        var remedy = Found.FirstRemedy<SeamBreaks>(closed);
        Assert.Equal(MendKind.LastRowOnce, remedy.Edit.Kind);
        Assert.Equal([new Repeat(4, [new ChartRows(1, 10, 1)]), new ChartRows(11, 11, 1)], Found.After(closed, remedy.Edit).Rows.Steps);
    }

    [Fact]
    public void Seams_are_those_of_the_definitions() => Law.OfDocuments(Found.LongDocuments, document => AssertSeams(document, document), 600, 30_000);

    [Fact]
    public void A_changed_cell_would_be_seen() => Law.CanFail(document =>
        AssertSeams(document, document with { Motif = document.Motif.With(0, 0, !document.Motif[0, 0]) }), 400);

    private static void AssertSeams(PatternDocument document, PatternDocument seen)
    {
        if (Weave.Checks.Of(Piece.Of(document)) is [NothingDrawn])
        {
            return;
        }

        var rows = Oracle.Rows(seen);
        var stepOfSeam = new Dictionary<int, int>(); // by the row that begins another time through
        for (var at = 1; at < rows.Count; at++)
        {
            if (rows[at].Step == rows[at - 1].Step && rows[at].Time != rows[at - 1].Time)
            {
                stepOfSeam[at + 1] = rows[at].Step;
            }
        }

        var across = new Dictionary<int, int>();
        var elsewhere = 0;
        for (var end = 0; end < rows[0].Over.Count; end++)
        {
            for (var first = 0; first < rows.Count;)
            {
                var next = first;
                while (next < rows.Count && rows[next].Over[end] == rows[first].Over[end])
                {
                    next++;
                }

                var seams = stepOfSeam.Where(seam => seam.Key > first + 1 && seam.Key <= next).OrderBy(seam => seam.Key).ToList();
                if (seams.Count == 0)
                {
                    elsewhere = Math.Max(elsewhere, next - first);
                }
                else
                {
                    across[seams[0].Value] = Math.Max(across.GetValueOrDefault(seams[0].Value), next - first);
                }

                first = next;
            }
        }

        var floating = seen.Width.Floating is null ? 0 : 1;
        var expected = across.Where(one => one.Value > elsewhere && Speaks(one.Key)).Select(one => (one.Key, one.Value, elsewhere)).Order();
        Assert.Equal(expected, Found.In<SeamBreaks>(document).Select(seam => (seam.Step, seam.Across, seam.Elsewhere)).Order());

        // a seam within the motif as drawn is the maker's own, unless two rows are alike there
        bool Speaks(int step)
        {
            var once = rows.Where(row => row.Step == step && row.Time == 1).ToList();
            var again = rows.First(row => row.Step == step && row.Time == 2);
            var alike = once[^1].Over.Skip(floating).SkipLast(floating).SequenceEqual(again.Over.Skip(floating).SkipLast(floating));
            return alike || !once.Select(row => row.ChartRow ?? 0).Order().SequenceEqual(Enumerable.Range(1, seen.Motif.Rows));
        }
    }
}
