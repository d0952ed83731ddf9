using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>Where rows stand: bands, places and the printed row that stands for each.</summary>
public sealed class PlaceLaws
{
    [Fact]
    public void Bands_follow_one_another_and_cover_every_row() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document);
        var next = 1;
        foreach (var band in piece.Bands)
        {
            Assert.Equal(next, band.FirstRow);
            Assert.True(band.Times > 1 == (band.Kind == BandKind.Repeated));
            next += band.RowsEachTime * band.Times;
        }

        Assert.Equal(piece.Rows.Count + 1, next);
        Assert.All(piece.Rows, row => Assert.InRange(row.Number, piece.Bands[piece.BandOf(row.Number)].FirstRow, piece.Bands[piece.BandOf(row.Number)].LastRow));
    });

    [Fact]
    public void Closing_rows_are_the_rows_after_the_last_repeated_ones() => Law.OfDocuments(document =>
    {
        var kinds = Piece.Of(document).Bands.Select(band => band.Kind).ToList();
        var last = kinds.LastIndexOf(BandKind.Repeated);
        Assert.All(kinds.Select((kind, i) => (kind, i)), at => Assert.Equal(last >= 0 && at.i > last, at.kind == BandKind.Closing));
    });

    [Fact]
    public void A_place_is_the_time_and_the_row_within_it() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document);
        foreach (var place in Places(document))
        {
            Assert.Equal(place, piece.PlaceOf(place.Number));
        }
    });

    [Fact]
    public void The_printed_row_for_a_row_reads_the_same_and_is_printed() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document);
        var rows = Oracle.Rows(document);
        var printed = piece.PrintedRows().ToHashSet();
        foreach (var row in rows)
        {
            var shown = rows[piece.PrintedFor(row.Number) - 1];
            Assert.Contains(shown.Number, printed);
            Assert.True(shown.Number <= row.Number);
            Assert.Equal(piece.PlaceOf(row.Number).Within, piece.PlaceOf(shown.Number).Within);
            Assert.Equal((row.From, row.ChartRow, row.Weft), (shown.From, shown.ChartRow, shown.Weft));
            Assert.Equal(row.Runs, shown.Runs);
        }

        Assert.All(printed, number => Assert.Equal(number, piece.PrintedFor(number)));
        Assert.Equal(printed.Order(), piece.PrintedRows());
    });

    [Fact]
    public void Rows_are_printed_twice_exactly_where_the_second_time_differs() => Law.OfDocuments(document =>
    {
        var rows = Oracle.Rows(document);
        var stitches = Oracle.Stitches(document);
        foreach (var band in Piece.Of(document).Bands)
        {
            var differs = band.Times > 1 && (
                Enumerable.Range(band.FirstRow - 1, band.RowsEachTime).Any(i => rows[i].From != rows[i + band.RowsEachTime].From || !rows[i].Over.SequenceEqual(rows[i + band.RowsEachTime].Over))
                || !Sides(band, 1).SequenceEqual(Sides(band, 2)));
            Assert.Equal(differs, band.ReadsDifferently);
            Assert.Equal(differs ? 2 : 1, band.PrintedTimes);
        }

        IEnumerable<(int, Side)> Sides(Band band, int time) => stitches
            .Where(stitch => stitch.Step == rows[band.FirstRow - 1].Step && stitch.Time == time)
            .Select(stitch => (stitch.AfterRow - band.FirstRowOf(time), stitch.From));
    });

    [Fact]
    public void An_odd_number_of_rows_with_entering_edges_and_a_mirrored_row_still_changes_sides()
    {
        var piece = Piece.Of(Charts.Document("x.x", floating: Charts.EnteringOver, steps: [new Repeat(3, [new ChartRows(1, 1, 1)])]));
        var band = Assert.Single(piece.Bands);
        Assert.True(band is { IsOdd: true, ReadsDifferently: true });
        Assert.Equal(["o2u1o1u1", "o2u1o1u1", "o2u1o1u1"], piece.Rows.Select(row => Charts.Short(piece.Readings[row.Reading].Runs)));
    }

    // Weft 2 only stitches here: no row reads differently the second time, yet the stitch begins at the other side.
    [Fact]
    public void A_stitch_that_begins_at_the_other_side_the_second_time_prints_the_rows_twice()
    {
        var document = Charts.Document("xx./.xx", steps: [new Repeat(2, [new ChartRows(1, 2, 1), new EdgeStitch("twining", StitchYarn.Working, 1, Side.Left, 2)])]);
        var piece = Piece.Of(document with { Rows = document.Rows with { Wefts = [new Weft(Side.Left), new Weft(Side.Left)] } });
        Assert.Equal([Side.Left, Side.Right], piece.Stitches.Select(stitch => stitch.From));
        Assert.True(Assert.Single(piece.Bands).ReadsDifferently);
    }

    private static IEnumerable<Place> Places(PatternDocument document)
    {
        var number = 0;
        foreach (var step in document.Rows.Steps)
        {
            var (times, inner) = step is Repeat repeat ? (repeat.Times, repeat.Steps.Sum(RowsOf)) : (1, RowsOf(step));
            for (var time = 1; time <= times && times > 1; time++)
            {
                for (var within = 1; within <= inner; within++)
                {
                    yield return new Place(++number, within, inner, time, times);
                }
            }

            number += times == 1 ? inner : 0;
        }
    }

    private static int RowsOf(RowStep step) => step switch
    {
        ChartRows rows => Math.Abs(rows.First - rows.Last) + 1,
        PlainRows rows => rows.Count,
        _ => 0,
    };
}
