using System.Collections.Concurrent;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>What a row reads depends on, and how many readings a chart row has (rule 8 of the design).</summary>
public sealed class ReadingLaws
{
    [Fact]
    public void Rows_share_a_reading_exactly_when_source_side_and_floating_ends_are_the_same() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document);
        var rows = Oracle.Rows(document);
        var readings = rows.Select(row => (Reading: piece.Rows[row.Number - 1].Reading, Depends: DependsOn(document, row))).Distinct().ToList();
        Assert.Equal(piece.Readings.Count, readings.Count);
        Assert.Equal(readings.Count, readings.DistinctBy(pair => pair.Reading).Count());
        Assert.Equal(readings.Count, readings.DistinctBy(pair => pair.Depends).Count());
    });

    [Fact]
    public void Without_floating_ends_or_with_entering_ones_a_chart_row_has_at_most_two_readings() => Law.OfDocuments(document =>
    {
        if (document.Width.Floating is not { Edges: EdgeWay.Alike })
        {
            Assert.All(ReadingsOfChartRows(document, _ => true), readings => Assert.InRange(readings, 1, 2));
        }
    });

    // Side and alike edges of one weft change together, row for row, unless a stitch takes the weft across between rows.
    [Fact]
    public void With_alike_edges_a_chart_row_has_at_most_two_readings_a_weft_and_four_where_a_stitch_shifts_travel()
    {
        var most = new ConcurrentDictionary<bool, int>();
        Law.OfFixedDocuments(document =>
        {
            if (document.Width.Floating is not { Edges: EdgeWay.Alike })
            {
                return;
            }

            for (var weft = 1; weft <= document.Rows.Wefts.Count; weft++)
            {
                var shifted = Oracle.Stitches(document).Any(s => s.Stitch.Yarn == StitchYarn.Working && s.Stitch.Weft == weft && s.Stitch.Across % 2 != 0);
                foreach (var readings in ReadingsOfChartRows(document, row => row.Weft == weft))
                {
                    Assert.InRange(readings, 1, shifted ? 4 : 2);
                    most.AddOrUpdate(shifted, readings, (_, before) => Math.Max(before, readings));
                }
            }
        }, small: 6_000); // four readings are rare: a thousand documents need not hold a case
        Assert.Equal((2, 4), (most[false], most[true]));
    }

    [Fact]
    public void Four_readings_by_a_stitch_and_two_with_entering_edges()
    {
        RowStep[] steps = [new ChartRows(1, 2, 1), new EdgeStitch("twining", StitchYarn.Working, 1, Side.Left, 1), new ChartRows(1, 2, 1), new ChartRows(1, 1, 1), new ChartRows(1, 1, 1)];
        var alike = Charts.Document("xx./x.x", floating: Charts.AlikeUnder, steps: [new Repeat(4, [.. steps.Cast<SimpleStep>(), new ChartRows(2, 2, 1)])]);
        Assert.Equal(4, ReadingsOfChartRows(alike, _ => true).Max());
        Assert.Equal(2, ReadingsOfChartRows(alike with { Width = alike.Width with { Floating = Charts.EnteringOver } }, _ => true).Max());
    }

    // Wefts that start at different sides meet alike edges in different travel: two readings each.
    [Fact]
    public void Two_wefts_that_start_at_different_sides_may_read_a_chart_row_in_four_ways()
    {
        var one = Charts.Document("xx.", floating: Charts.AlikeUnder, steps: [new Repeat(2, [new ChartRows(1, 1, 1), new ChartRows(1, 1, 2)])]);
        static PatternDocument Starting(PatternDocument document, Side second) => document with { Rows = document.Rows with { Wefts = [new Weft(Side.Left), new Weft(second)] } };
        Assert.Equal([2], ReadingsOfChartRows(Starting(one, Side.Left), _ => true));
        Assert.Equal([4], ReadingsOfChartRows(Starting(one, Side.Right), _ => true));
    }

    [Fact]
    public void A_row_is_the_same_as_the_first_that_reads_the_same_in_the_same_travel() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document);
        var rows = Oracle.Rows(document);
        foreach (var row in rows)
        {
            var first = rows.First(other => other.From == row.From && other.Runs.SequenceEqual(row.Runs)).Number;
            Assert.Equal(first < row.Number ? first : null, piece.SameReadingBefore(row.Number));
        }
    });

    [Fact]
    public void Reading_rows_once_says_the_same_and_keeps_nothing() => Law.OfDocuments(document =>
    {
        var (piece, other) = (Piece.Of(document), Piece.Of(document));
        var read = piece.Reader();
        Assert.All(Enumerable.Range(1, piece.Rows.Count).Reverse(), number => Assert.Equal(other.Reading(number), read(number)));
        Assert.Equal((false, true), (piece.KeepsReadings, other.KeepsReadings));
    });

    [Fact]
    public void Pattern_end_j_shows_motif_end_j_plus_offset() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document);
        foreach (var row in piece.Rows.Where(row => row.ChartRow is not null))
        {
            for (var j = 0; j < piece.PatternEnds; j++)
            {
                var shown = (j + document.Width.Offset) % document.Motif.Columns;
                Assert.Equal(shown, piece.MotifEnd(j));
                Assert.Equal(document.Motif[row.Source.Index, shown], piece.At(row.Number, j + piece.FloatingPerSide) == Stroke.Over);
            }
        }
    });

    [Fact]
    public void Floating_ends_are_named_F_and_pattern_ends_are_numbered_from_the_left()
    {
        var piece = Piece.Of(Charts.Document("xx.", balance: 1, floating: Charts.AlikeUnder));
        Assert.Equal(["F", "1", "2", "3", "4", "F"], Enumerable.Range(0, piece.Ends).Select(piece.EndName));
        Assert.Equal(["1", "2", "3"], Enumerable.Range(0, 3).Select(Piece.Of(Charts.Document("xx.")).EndName));
    }

    private static IEnumerable<int> ReadingsOfChartRows(PatternDocument document, Func<WovenRow, bool> among) => Piece.Of(document).Rows
        .Where(row => row.ChartRow is not null && among(row))
        .GroupBy(row => row.ChartRow)
        .Select(rows => rows.DistinctBy(row => row.Reading).Count());

    // A plain row's source is which of the two plain rows it is, seen at end 1.
    private static (int? ChartRow, bool End1, Side From, bool? Left, bool? Right) DependsOn(PatternDocument document, OracleRow row)
    {
        var floating = document.Width.Floating is not null;
        return (
            row.ChartRow,
            row.ChartRow is null && row.Over[floating ? 1 : 0],
            row.From,
            floating ? row.Over[0] : null,
            floating ? row.Over[^1] : null);
    }
}
