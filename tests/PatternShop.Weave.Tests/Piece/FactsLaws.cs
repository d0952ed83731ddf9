using System.Globalization;
using System.Text.Json;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>The facts file read back and held against the definitions.</summary>
public sealed class FactsLaws
{
    [Fact]
    public void The_weaving_order_in_the_facts_is_what_the_definitions_say() =>
        Law.OfDocuments(document => Assert.Equal(Expected(document), Told(document)), small: 400, full: 20_000);

    [Fact]
    public void A_changed_cell_would_be_seen() =>
        Law.CanFail(document => Assert.Equal(Expected(document with { Motif = document.Motif.With(0, 0, !document.Motif[0, 0]) }), Told(document)));

    [Fact]
    public void Counts_and_input_are_told() => Law.OfDocuments(
        document =>
        {
            using var facts = JsonDocument.Parse(PieceFacts.Json(Piece.Of(document), Wording.English));
            var (root, input, rows) = (facts.RootElement, facts.RootElement.GetProperty("input"), Oracle.Rows(document));
            Assert.Equal(document.Title, root.GetProperty("title").GetString());
            Assert.Equal(rows.Count, root.GetProperty("rows").GetInt32());
            Assert.Equal(rows[0].Over.Count, root.GetProperty("ends").GetInt32());
            Assert.Equal(GridText.Write(document.Motif), input.GetProperty("chart").EnumerateArray().Select(row => row.GetString()!));
            Assert.Equal(
                (document.Width.Repeats, document.Width.Offset, document.Width.Balance, document.Width.Floating is null ? 0 : 1),
                (input.GetProperty("repeats").GetInt32(), input.GetProperty("offset").GetInt32(), input.GetProperty("balance").GetInt32(), input.GetProperty("floating").GetInt32()));
            Assert.Equal(document.Width.Floating?.Edges.ToString().ToLowerInvariant(), input.GetProperty("edges").GetString());
            Assert.Equal(document.Width.Floating?.First.ToString().ToLowerInvariant(), input.GetProperty("firstEdge").GetString());
            Assert.Equal(document.Rows.Wefts[0].Start.ToString().ToLowerInvariant(), input.GetProperty("start").GetString());
        },
        small: 400,
        full: 20_000);

    [Fact]
    public void Mirrored_is_said_of_every_row_as_it_is_woven() => Law.OfDocuments(document => Assert.Equal(IsMirrored(document), Root(document).GetProperty("mirrored").GetBoolean()));

    [Fact]
    public void The_motif_alone_would_be_seen() => Law.CanFail(document => Assert.Equal(IsMirrored(document), !DocumentTraits.IsAsymmetric(document)));

    // The motif mirrors in all of them.
    [Fact]
    public void Floating_ends_and_plain_rows_tell_whether_a_piece_mirrors()
    {
        static bool Mirrored(PatternDocument document) => Root(document).GetProperty("mirrored").GetBoolean();
        Assert.True(Mirrored(Charts.Document("x.x/.x.", floating: Charts.AlikeUnder)));
        Assert.False(Mirrored(Charts.Document("x.x/.x.", floating: Charts.EnteringOver)));
        Assert.True(Mirrored(Charts.Document("x.x/.x.", steps: [new ChartRows(1, 2, 1), new PlainRows(1, 1)])));
        Assert.False(Mirrored(Charts.Document("x..x/.xx.", steps: [new ChartRows(1, 2, 1), new PlainRows(1, 1)])));
        Assert.True(Mirrored(Charts.Document("x.x/.x./xx.", steps: [new ChartRows(1, 2, 1)])));
    }

    [Fact]
    public void Repeated_rows_read_differently_only_where_a_row_does() => Law.OfDocuments(document =>
    {
        var rows = Oracle.Rows(document);
        foreach (var repeated in Root(document).GetProperty("repeatedRows").EnumerateArray())
        {
            var (first, each) = (repeated.GetProperty("firstRow").GetInt32() - 1, repeated.GetProperty("rows").GetInt32());
            var differs = Enumerable.Range(first, each).Any(row => rows[row].From != rows[row + each].From || !rows[row].Runs.SequenceEqual(rows[row + each].Runs));
            Assert.Equal(differs, repeated.GetProperty("readsDifferently").GetBoolean());
        }
    });

    [Fact]
    public void A_stitch_that_changes_sides_is_no_other_reading()
    {
        var twining = new EdgeStitch("twining", StitchYarn.Working, 1, Side.Left, 2);
        var document = Charts.Document("xx./.xx") with
        {
            Rows = new RowPlan([new Weft(Side.Left), new Weft(Side.Left)], Stroke.Under, [new Repeat(2, [new ChartRows(1, 2, 1), twining])]),
        };
        Assert.Equal(["left", "right"], Root(document).GetProperty("stitches").EnumerateArray().Select(stitch => stitch.GetProperty("from").GetString()));
        Assert.False(Root(document).GetProperty("repeatedRows")[0].GetProperty("readsDifferently").GetBoolean());
        Assert.Equal(2, Piece.Of(document).Bands[0].PrintedTimes);
    }

    private static List<string> Expected(PatternDocument document) => Oracle.Rows(document)
        .Select(row => Line(row.Number, row.ChartRow, row.Weft, row.Time, row.From == Side.Left ? "left" : "right", row.Runs.Select(run => (run.Over ? "over" : "under", run.Count))))
        .ToList();

    private static bool IsMirrored(PatternDocument document) => Oracle.Rows(document).All(row => row.Over.SequenceEqual(row.Over.Reverse()));

    private static JsonElement Root(PatternDocument document) => JsonSerializer.Deserialize<JsonElement>(PieceFacts.Json(Piece.Of(document), Wording.English));

    private static List<string> Told(PatternDocument document)
    {
        using var facts = JsonDocument.Parse(PieceFacts.Json(Piece.Of(document), Wording.English));
        return facts.RootElement.GetProperty("weavingOrder").EnumerateArray().Select(row => Line(
            row.GetProperty("number").GetInt32(),
            Nullable(row.GetProperty("chartRow")),
            row.GetProperty("weft").GetInt32(),
            Nullable(row.GetProperty("time")),
            row.GetProperty("from").GetString()!,
            row.GetProperty("runs").EnumerateArray().Select(run => (run[0].GetString()!, run[1].GetInt32())))).ToList();
    }

    private static int? Nullable(JsonElement value) => value.ValueKind == JsonValueKind.Null ? null : value.GetInt32();

    private static string Line(int number, int? chartRow, int weft, int? time, string from, IEnumerable<(string, int)> runs) => string.Create(
        CultureInfo.InvariantCulture,
        $"{number} chart {chartRow} weft {weft} time {time} from {from}: {string.Join(' ', runs)}");
}
