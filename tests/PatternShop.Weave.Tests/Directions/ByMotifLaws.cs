using System.Collections.Concurrent;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class ByMotifLaws
{
    [Fact]
    public void Parts_written_out_are_the_row() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document);
        Assert.All(piece.Readings, reading => Assert.Equal(reading.Runs, ByMotif.Of(piece, reading).WriteOut()));
    });

    // Edge, motifs, balance, edge from the left; the other way round from the right; each covers the ends that the width plan gives it.
    [Fact]
    public void Parts_stand_in_the_direction_of_travel_and_cover_the_width_plan() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document);
        var motif = document.Motif.Columns;
        foreach (var reading in piece.Readings)
        {
            var parts = ByMotif.Of(piece, reading).Parts;
            var kinds = parts.Select(part => part.Kind).ToList();
            if (reading.Key.From == Side.Right)
            {
                kinds.Reverse();
            }

            var edge = document.Width.Floating is null ? 0 : 1;
            List<PartKind> expected =
            [
                .. Enumerable.Repeat(PartKind.Edge, edge),
                .. Enumerable.Repeat(PartKind.Motif, parts.Count(part => part.Kind == PartKind.Motif)),
                .. Enumerable.Repeat(PartKind.Balance, Math.Sign(document.Width.Balance)),
                .. Enumerable.Repeat(PartKind.Edge, edge),
            ];
            Assert.Equal(expected, kinds);
            Assert.Equal(document.Width.Repeats, parts.Where(part => part.Kind == PartKind.Motif).Sum(part => part.Motifs * part.Times));
            Assert.All(parts, part => Assert.Equal(
                part.Kind switch { PartKind.Edge => 1, PartKind.Balance => document.Width.Balance, _ => motif * part.Motifs },
                part.Writing.WriteOut().Sum(run => run.Count)));
            Assert.All(parts.Where(part => part.Times > 1), part => Assert.InRange(part.Writing.Depth, 0, 1));
            var isChart = reading.Key.Source.Kind == RowKind.Chart;
            Assert.True(!isChart || parts.Count(part => part.Kind == PartKind.Motif) == 1, "a chart row is one motif again and again");
        }
    });

    // Whole piece 1 of the check values, cut by hand where the motifs begin. A motif of row 2 takes 7 items with one bracket, over 1 or under 1 first;
    // of two equally short writings the one with the earlier bracket stands.
    [Fact]
    public void The_diamond_by_the_motif()
    {
        var piece = Piece.Of(Charts.DiamondPiece);
        string Of(int row) => Wording.English.MotifText(ByMotif.Of(piece, piece.Reading(row)));
        Assert.Equal("edge: over 1 · motif: [over 1, under 1, over 2, under 3, over 2, under 1] × 2 · balance: over 1 · edge: over 1", Of(1));
        Assert.Equal("edge: under 1 · balance: under 1 · motif: [over 1, (under 1, over 2) × 2, under 1, over 1, under 1] × 2 · edge: under 1", Of(2));
    }

    [Fact]
    public void Plain_rows_over_a_motif_of_an_odd_number_of_ends_read_by_turns()
    {
        string Of(int repeats)
        {
            var piece = Piece.Of(Charts.Document("xx.", repeats, floating: Charts.AlikeUnder, steps: [new ChartRows(1, 1, 1), new PlainRows(2, 1)]));
            return Wording.English.MotifText(ByMotif.Of(piece, piece.Reading(3)));
        }

        Assert.Equal("edge: under 1 · motif: over 1, under 1, over 1 · edge: under 1", Of(1));
        Assert.Equal("edge: under 1 · 2 motifs: [(over 1, under 1) × 3] × 2 · motif: over 1, under 1, over 1 · edge: under 1", Of(5));
    }

    [Fact]
    public void Kinds_of_rows_are_among_the_cases()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = 0;
        Law.OfFixedDocuments(document =>
        {
            var piece = Piece.Of(document);
            Interlocked.Increment(ref cases);
            var parts = piece.Readings.SelectMany(reading => ByMotif.Of(piece, reading).Parts).ToList();
            foreach (var (kind, belongs) in new[] { ("by turns", parts.Exists(part => part.Motifs == 2)), ("brackets in a motif", parts.Exists(part => part.Times > 1 && part.Writing.Depth == 1)) })
            {
                met.AddOrUpdate(kind, belongs ? 1 : 0, (_, count) => count + (belongs ? 1 : 0));
            }
        });
        Law.AssertShares(["by turns", "brackets in a motif"], met, cases);
    }
}
