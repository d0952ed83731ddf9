using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>Which row was woven last, against the oracle's rows: whatever part of the true row is read, from whichever side.</summary>
public sealed class WhichRowLaws
{
    // A document, a place in it, from which side one reads and how many runs of the row and of the one below.
    private static readonly Gen<(PatternDocument Document, int Row, Side Side, int Runs, int Below)> Looks = Gen.Select(
        DocumentGen.Documents, Gen.Int[0, 1_000_000], Gen.Bool, Gen.Int[0, 30], Gen.Int[0, 30],
        (document, row, left, runs, below) => (document, row, left ? Side.Left : Side.Right, runs, below));

    [Fact]
    public void Candidates_are_exactly_the_rows_that_begin_so_and_the_true_row_is_always_one()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = 0;
        Looks.SampleFixed(
            look =>
            {
                var rows = Oracle.Rows(look.Document);
                var piece = Piece.Of(look.Document);
                var row = (look.Row % rows.Count) + 1;
                var seen = Seen(rows[row - 1], look.Side, look.Runs);
                var found = WhichRow.Find(piece, seen);
                Assert.Contains(row, found.Rows);
                Assert.Equal(rows.Where(other => Begins(other, seen)).Select(other => other.Number), found.Rows);
                Interlocked.Increment(ref cases);
                Count(met, "one", found.One is not null);
                Count(met, "several", found.Rows.Count > 1);
                Count(met, "the row below tells", found.BelowTells);
                Count(met, "read against travel", look.Side != rows[row - 1].From);
                Assert.Equal(found.Rows.Count == 1 ? row : null, found.One);
            },
            Effort.Of(2_000, 100_000));
        Law.AssertShares(["one", "several", "the row below tells", "read against travel"], met, cases);
    }

    [Fact]
    public void The_row_below_never_adds_and_leaves_the_true_row()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = 0;
        Looks.SampleFixed(
            look =>
            {
                var rows = Oracle.Rows(look.Document);
                if (rows.Count < 2)
                {
                    return;
                }

                var piece = Piece.Of(look.Document);
                var row = (look.Row % (rows.Count - 1)) + 2;
                var (seen, below) = (Seen(rows[row - 1], look.Side, look.Runs), Seen(rows[row - 2], look.Side, look.Below));
                var (alone, both) = (WhichRow.Find(piece, seen), WhichRow.Find(piece, seen, below));
                Assert.Contains(row, both.Rows);
                Assert.Subset(alone.Rows.ToHashSet(), both.Rows.ToHashSet());
                Assert.Equal(rows.Skip(1).Where(other => Begins(other, seen) && Begins(rows[other.Number - 2], below)).Select(other => other.Number), both.Rows);
                if (!alone.BelowTells)
                {
                    Assert.Equal(alone.Rows, both.Rows);
                }

                Interlocked.Increment(ref cases);
                Count(met, "below narrows", both.Rows.Count < alone.Rows.Count);
                Count(met, "below cannot tell", !alone.BelowTells && alone.Rows.Count > 1);
            },
            Effort.Of(2_000, 100_000));
        Law.AssertShares(["below narrows", "below cannot tell"], met, cases);
    }

    [Fact]
    public void More_runs_never_add() => Looks.Sample(
        look =>
        {
            var rows = Oracle.Rows(look.Document);
            var piece = Piece.Of(look.Document);
            var row = rows[look.Row % rows.Count];
            var fewer = WhichRow.Find(piece, Seen(row, look.Side, look.Runs)).Rows;
            Assert.Subset(fewer.ToHashSet(), WhichRow.Find(piece, Seen(row, look.Side, look.Runs + 1)).Rows.ToHashSet());
        },
        iter: Effort.Of(1_000, 50_000));

    // Whole piece 1 of the check values: rows 3 and 9 read alike, each time through; below them lie rows 2 and 8.
    [Fact]
    public void The_diamond_is_found_by_a_row_and_the_one_below()
    {
        var piece = Piece.Of(Charts.DiamondPiece);
        var row3 = new SeenRow(Side.Right, [new Run(Stroke.Over, 1), new Run(Stroke.Under, 2)]);
        var found = WhichRow.Find(piece, row3);
        Assert.Equal([3, 9, 13, 19], found.Rows);
        Assert.True(found.BelowTells);
        Assert.Equal([3, 13], WhichRow.Find(piece, row3, new SeenRow(Side.Right, [new Run(Stroke.Under, 2)])).Rows);
        Assert.Equal([9, 19], WhichRow.Find(piece, row3, new SeenRow(Side.Right, [new Run(Stroke.Under, 1)])).Rows);
        Assert.Equal(22, WhichRow.Find(piece, new SeenRow(Side.Right, [new Run(Stroke.Under, 1), new Run(Stroke.Over, 1), new Run(Stroke.Under, 1)])).One);
        Assert.Empty(WhichRow.Find(piece, new SeenRow(Side.Left, [new Run(Stroke.Over, 9)])).Rows);
    }

    private static SeenRow Seen(OracleRow row, Side side, int runs) => new(
        side,
        (row.From == side ? row.Runs : row.Runs.Reverse()).Take(runs).Select(run => new Run(run.Over ? Stroke.Over : Stroke.Under, run.Count)).ToSequence());

    private static bool Begins(OracleRow row, SeenRow seen) => Seen(row, seen.From, seen.Runs.Count) is var begin && begin.Runs.Equals(seen.Runs);

    private static void Count(ConcurrentDictionary<string, int> met, string kind, bool belongs)
    {
        if (belongs)
        {
            met.AddOrUpdate(kind, 1, (_, count) => count + 1);
        }
    }
}
