using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class SymmetryLaws
{
    // Among any cells and mirrored ones: twills with any step, half-turned and repeated charts.
    private static readonly Gen<BitGrid> Motifs =
        from motif in DocumentGen.Motifs(6, 6)
        from kind in Gen.Int[0, 5]
        from step in Gen.Int[0, 6]
        from times in Gen.Int[1, 2]
        select kind switch
        {
            0 => BitGrid.Create(motif.Columns * times, motif.Columns, (row, end) => motif[0, (end + (row * step)) % motif.Columns]),
            1 => BitGrid.Create(motif.Rows * 2, motif.Columns, (row, end) => row < motif.Rows ? motif[row, end] : motif[(2 * motif.Rows) - 1 - row, motif.Columns - 1 - end]),
            2 => BitGrid.Create(motif.Rows * 2, motif.Columns * times, (row, end) => motif[row % motif.Rows, (end + (row / motif.Rows * step)) % motif.Columns]),
            3 => BitGrid.Create(motif.Rows * 2, motif.Columns, (row, end) => motif[Math.Min(row, (2 * motif.Rows) - 1 - row), end]),
            _ => motif,
        };

    [Fact]
    public void Moves_mirrors_and_half_turns_are_those_found_by_trying()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = 0;
        Motifs.SampleFixed(
            motif =>
            {
                Interlocked.Increment(ref cases);
                var symmetry = Symmetry.Of(motif);
                var moves = Sums(motif, (row, end, a, b) => (row + a, end + b));
                Assert.Equal(moves.Where(move => move.A == 0 && move.B > 0).Select(move => move.B).DefaultIfEmpty(motif.Columns).Min(), symmetry.Across);
                var (up, aside) = moves.Where(move => move.A > 0).Order().DefaultIfEmpty((motif.Rows, 0)).First();
                Assert.Equal((up, aside), (symmetry.Up, symmetry.Aside));
                Assert.Equal(moves.Where(move => move.A > 0 && move.B == 0).Select(move => move.A).DefaultIfEmpty(motif.Rows).Min(), symmetry.Along);
                Assert.Equal(Sums(motif, (row, end, _, b) => (row, b - end)).Where(sum => sum.A == 0).Select(sum => sum.B), symmetry.MirrorEnds);
                Assert.Equal(Sums(motif, (row, end, a, _) => (a - row, end)).Where(sum => sum.B == 0).Select(sum => sum.A), symmetry.MirrorRows);
                var turns = Sums(motif, (row, end, a, b) => (a - row, b - end));
                Assert.Equal(turns.Count > 0 ? turns[0] : null, symmetry.Turn);
                Assert.Equal(
                    from row in Enumerable.Range(0, 2 * motif.Rows)
                    from end in Enumerable.Range(0, 2 * motif.Columns)
                    where turns.Contains((row % motif.Rows, end % motif.Columns))
                    select new HalfTurn(new Middle(row), new Middle(end)),
                    symmetry.HalfTurns());
                foreach (var kind in Kinds(motif, symmetry))
                {
                    met.AddOrUpdate(kind, 1, (_, count) => count + 1);
                }
            },
            Effort.Of(2_000, 50_000));
        Law.AssertShares(["moves up and aside", "mirrors across", "mirrors along", "turns", "none"], met, cases);
    }

    [Fact]
    public void A_changed_cell_would_be_seen()
    {
        var twill = GridText.Read("xx..", ".xx.", "..xx", "x..x");
        Assert.Equal((4, 1, 1, 4), (Symmetry.Of(twill).Across, Symmetry.Of(twill).Up, Symmetry.Of(twill).Aside, Symmetry.Of(twill).Along));
        var changed = Symmetry.Of(twill.With(0, 0, false));
        Assert.Equal((4, 4, 0), (changed.Across, changed.Up, changed.Aside));
    }

    [Fact]
    public void The_diamond_mirrors_both_ways_on_an_end_and_on_a_row()
    {
        var diamond = Symmetry.Of(GridText.Read(Charts.TenEndDiamond.Split('/')));

        // computed by hand from x.xx...xx. / .x.xx.xx.x / …: ends 1 and 6 are the middles, rows 1 and 6 as well
        Assert.Equal([new Middle(0), new Middle(10)], diamond.AxesAcross);
        Assert.Equal([new Middle(0), new Middle(10)], diamond.AxesAlong);
        Assert.True(diamond.AxesAcross[1].IsOnThread);
        Assert.Equal(5, diamond.AxesAcross[1].Thread);
    }

    // Pairs (a, b) below (rows, ends), ascending, for which every cell is like the one that it goes to.
    private static List<(int A, int B)> Sums(BitGrid motif, Func<int, int, int, int, (int Row, int End)> to)
    {
        var found = new List<(int A, int B)>();
        for (var a = 0; a < motif.Rows; a++)
        {
            for (var b = 0; b < motif.Columns; b++)
            {
                if (Same(motif, a, b, to))
                {
                    found.Add((a, b));
                }
            }
        }

        return found;
    }

    private static bool Same(BitGrid motif, int a, int b, Func<int, int, int, int, (int Row, int End)> to)
    {
        for (var row = 0; row < motif.Rows; row++)
        {
            for (var end = 0; end < motif.Columns; end++)
            {
                var (r, e) = to(row, end, a, b);
                if (motif[row, end] != motif[(r + motif.Rows) % motif.Rows, (e + motif.Columns) % motif.Columns])
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static IEnumerable<string> Kinds(BitGrid motif, Symmetry symmetry)
    {
        if (symmetry.Up < motif.Rows && symmetry.Aside > 0)
        {
            yield return "moves up and aside";
        }

        if (symmetry.MirrorEnds.Count > 0)
        {
            yield return "mirrors across";
        }

        if (symmetry.MirrorRows.Count > 0)
        {
            yield return "mirrors along";
        }

        if (symmetry.Turn is not null)
        {
            yield return "turns";
        }

        if (symmetry is { MirrorEnds.Count: 0, MirrorRows.Count: 0, Turn: null })
        {
            yield return "none";
        }
    }
}
