using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class ClosingRowsLaws
{
    [Fact]
    public void Closing_rows_really_mirror_and_no_fewer_do()
    {
        var (none, some) = (0, 0);
        var motifs = Gen.OneOf(DocumentGen.Motifs(6, 4), DocumentGen.Motifs(4, 6).Select(motif => Twills.Diamond(motif, PointWay.Shared)), DocumentGen.Motifs(6, 2));
        Gen.Select(motifs, Gen.Int[2, 4], Gen.Int[0, 2], Gen.Int[0, 8]).SampleFixed(
            made =>
            {
                var (motif, times, plain, turn) = made;
                var moved = Transforms.Shift(motif, 0, turn);
                Sequence<SimpleStep> once = plain == 0 ? [new ChartRows(1, moved.Rows, 1)] : [new ChartRows(1, moved.Rows, 1), new PlainRows(plain, 1)];
                var document = Charts.Document(string.Join('/', GridText.Write(moved)), floating: Charts.AlikeUnder, steps: new Repeat(times, once));
                var expected = ByTrying(document, times);
                Assert.Equal(expected, ClosingRows.Fewest(Piece.Of(document)));
                Interlocked.Increment(ref expected is null ? ref none : ref some);
                if (plain == 0)
                {
                    Assert.Equal(expected, ClosingRows.Fewest(moved));
                }
            },
            Effort.Of(1_000, 30_000));
        Assert.True(none > 50 && some > 50, $"{none} never mirror, {some} do");
    }

    [Fact]
    public void The_diamond_closes_with_one_row()
    {
        // common practice, no source: rows 1-10 as often as wished, then row 1
        var diamond = GridText.Read(Charts.TenEndDiamond.Split('/'));
        Assert.Equal(1, ClosingRows.Fewest(diamond));
        Assert.Null(ClosingRows.Fewest(GridText.Read("xx.", ".xx", "x.x")));
        Assert.Null(ClosingRows.Fewest(Piece.Of(Charts.Document(Charts.TenEndDiamond))));
        Assert.Equal("1 closing row makes top and bottom mirror.", Wording.English.ClosingRowsText(1));
    }

    // Weaves one time more than that, and takes as few rows of it as mirror.
    private static int? ByTrying(PatternDocument document, int times)
    {
        var repeat = (Repeat)document.Rows.Steps[0];
        var rows = Oracle.Rows(document with { Rows = document.Rows with { Steps = [repeat with { Times = times + 2 }] } })
            .Select(row => string.Concat(row.Over.Skip(1).SkipLast(1).Select(over => over ? 'x' : '.'))).ToList();
        var each = rows.Count / (times + 2);
        return Enumerable.Range(0, 2 * each)
            .Select(closing => (int?)closing)
            .FirstOrDefault(closing => Mirrors(rows.Take((each * times) + closing!.Value).ToList()));
    }

    private static bool Mirrors(List<string> rows) => Enumerable.Range(0, rows.Count).All(i => rows[i] == rows[rows.Count - 1 - i]);
}
