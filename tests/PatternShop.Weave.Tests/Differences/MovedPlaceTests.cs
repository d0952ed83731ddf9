using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>Corrections of a piece whose rows are repeated, and where somebody in the middle goes on; the expectations are counted here by time and row.</summary>
public sealed class MovedPlaceTests
{
    private enum Kind
    {
        Insert,
        Remove,
        Change,
    }

    [Fact]
    public void Generated_corrections_move_every_place_rightly()
    {
        var kinds = new int[3];
        Corrections.SampleFixed(
            correction =>
            {
                Interlocked.Increment(ref kinds[(int)correction.Kind]);
                var (old, @new) = (Piece.Of(Document(correction.Old, correction.Times)), Piece.Of(Document(correction.New, correction.Times)));
                var difference = PieceDifference.Between(old, @new);
                for (var woven = 0; woven <= old.Rows.Count; woven++)
                {
                    Assert.Equal(ExpectedNext(correction, woven), difference.Move(woven).Next);
                }

                var touched = difference.Rows.Count(row => Shape(row) == correction.Kind);
                Assert.True(touched >= correction.Times, $"{touched} of {correction.Times} times");
            },
            Effort.Of(200, 2000));
        Assert.All(kinds, share => Assert.True(share >= 10));
    }

    [Fact]
    public void Changed_rows_are_told_as_passed_or_to_come()
    {
        var motif = GridText.Read("xx..", ".xx.", "..xx", "x..x");
        var difference = PieceDifference.Between(Piece.Of(Document(motif, 3)), Piece.Of(Document(motif.With(1, 3, true), 3)));
        var moved = difference.Move(7);
        Assert.Equal(8, moved.Next);
        Assert.Equal([2, 6], moved.Passed.Select(row => row.Old!.Value));
        Assert.Equal([10], moved.ToCome.Select(row => row.New!.Value));
        Assert.True(moved.SideFits);
    }

    [Fact]
    public void A_row_inserted_before_the_place_turns_the_side()
    {
        var difference = PieceDifference.Between(
            Piece.Of(Document(GridText.Read("xx..", ".xx.", "..xx", "x..x"), 2)),
            Piece.Of(Document(GridText.Read("xx..", "x.x.", ".xx.", "..xx", "x..x"), 2)));
        var moved = difference.Move(3);
        Assert.Equal(5, moved.Next);
        Assert.Equal([2], moved.Passed.Where(row => row.Fate == RowFate.Inserted).Select(row => row.New!.Value));
        Assert.False(moved.SideFits);
    }

    private static Kind? Shape(RowPair row) => row.Fate switch
    {
        RowFate.Inserted => Kind.Insert,
        RowFate.Removed => Kind.Remove,
        RowFate.Changed => Kind.Change,
        _ => null,
    };

    // All rows Times times; row At (from 0) is inserted before, removed or changed. Motif rows are pairwise different so that the place is beyond doubt.
    private static int ExpectedNext(Correction correction, int woven)
    {
        if (woven == 0)
        {
            return 1;
        }

        var (oldRows, newRows) = (correction.Old.Rows, correction.New.Rows);
        var (time, within) = ((woven - 1) / oldRows, (woven - 1) % oldRows);
        return correction.Kind switch
        {
            Kind.Insert => (time * newRows) + within + (within >= correction.At ? 1 : 0) + 2,
            Kind.Remove when within >= correction.At => (time * newRows) + within + 1,
            _ => (time * newRows) + within + 2,
        };
    }

    private static PatternDocument Document(BitGrid motif, int times) => new(
        "Correction", "en", "", "", motif,
        new WidthPlan(2, 0, 0, new FloatingSelvedges(EdgeWay.Alike, Stroke.Under)),
        new RowPlan([new Weft(Side.Left)], Stroke.Under, [new Repeat(times, [new ChartRows(1, motif.Rows, 1)])]),
        new Gauge(new Density(4, DensityUnit.PerInch), new Density(4, DensityUnit.PerInch)),
        GlyphStyle.Cells);

    private static Gen<Correction> Corrections { get; } =
        from rows in Gen.Int[3, 9]
        from order in Gen.Shuffle(Enumerable.Range(1, 62).ToArray())
        from kind in Gen.Enum<Kind>()
        from at in Gen.Int[0, rows - 1]
        from times in Gen.Int[2, 5]
        select Make(order, rows, kind, at, times);

    // Six ends, each row the bits of another number; the row that is inserted or put in the place of another is the number after the last.
    private static Correction Make(int[] order, int rows, Kind kind, int at, int times)
    {
        var old = order.Take(rows).ToList();
        var @new = old.ToList();
        switch (kind)
        {
            case Kind.Insert:
                @new.Insert(at, order[rows]);
                break;
            case Kind.Remove:
                @new.RemoveAt(at);
                break;
            default:
                @new[at] = order[rows];
                break;
        }

        return new Correction(Grid(old), Grid(@new), kind, at, times);
    }

    private static BitGrid Grid(List<int> rows) => BitGrid.Create(rows.Count, 6, (row, end) => (rows[row] >> end & 1) != 0);

    private sealed record Correction(BitGrid Old, BitGrid New, Kind Kind, int At, int Times);
}
