using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class MirroringLaws
{
    private static readonly Gen<BitGrid> Motifs = DocumentGen.Motifs(6, 9);

    [Fact]
    public void Ways_to_mirror_really_mirror_and_no_fewer_balance_ends_do()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = 0;
        Gen.Select(Motifs, Gen.Int[1, 3]).SampleFixed(
            (motif, repeats) =>
            {
                Interlocked.Increment(ref cases);
                var expected = WaysByTrying(motif, repeats);
                Assert.Equal(expected, Mirroring.EveryOffset(motif));
                var fewest = Mirroring.Fewest(motif);
                Assert.Equal(expected.Where(way => way.Balance == expected.Min(other => other.Balance)), fewest);
                met.AddOrUpdate(fewest.Count == 0 ? "never" : "mirrors", 1, (_, count) => count + 1);
                met.AddOrUpdate(fewest.Count > 1 ? "several ways" : "one way", 1, (_, count) => count + 1);
            },
            Effort.Of(2_000, 50_000));
        Law.AssertShares(["never", "mirrors", "several ways", "one way"], met, cases);
    }

    [Fact]
    public void A_changed_cell_would_be_seen()
    {
        var motif = GridText.Read("xxx..", ".x.xx");
        Assert.Equal(WaysByTrying(motif, 2), Mirroring.EveryOffset(motif));
        Assert.NotEqual(WaysByTrying(motif.With(0, 0, false), 2), Mirroring.EveryOffset(motif));
    }

    [Fact]
    public void Whether_a_piece_mirrors_is_seen_in_its_cells() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document with { Rows = document.Rows with { Steps = [new ChartRows(1, document.Motif.Rows, 1)] } });
        var mirrored = piece.Rows.All(row => Enumerable.Range(0, piece.PatternEnds).All(end =>
            piece.At(row.Number, piece.FloatingPerSide + end) == piece.At(row.Number, piece.FloatingPerSide + piece.PatternEnds - 1 - end)));
        Assert.Equal(mirrored, Mirroring.IsMirrored(document.Motif, document.Width));
    });

    // For every offset the fewest balance ends below a whole motif, found by looking at every cell.
    private static List<MirrorWay> WaysByTrying(BitGrid motif, int repeats)
    {
        var ways = new List<MirrorWay>();
        for (var offset = 0; offset < motif.Columns; offset++)
        {
            for (var balance = 0; balance < motif.Columns; balance++)
            {
                if (Mirrors(motif, offset, (motif.Columns * repeats) + balance))
                {
                    ways.Add(new MirrorWay(offset, balance));
                    break;
                }
            }
        }

        return ways;
    }

    private static bool Mirrors(BitGrid motif, int offset, int ends)
    {
        for (var row = 0; row < motif.Rows; row++)
        {
            for (var end = 0; end < ends; end++)
            {
                if (motif[row, (offset + end) % motif.Columns] != motif[row, (offset + ends - 1 - end) % motif.Columns])
                {
                    return false;
                }
            }
        }

        return true;
    }
}
