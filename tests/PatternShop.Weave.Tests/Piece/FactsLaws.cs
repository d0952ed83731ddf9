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

    private static List<string> Expected(PatternDocument document) => Oracle.Rows(document)
        .Select(row => Line(row.Number, row.ChartRow, row.Weft, row.Time, row.From == Side.Left ? "left" : "right", row.Runs.Select(run => (run.Over ? "over" : "under", run.Count))))
        .ToList();

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
