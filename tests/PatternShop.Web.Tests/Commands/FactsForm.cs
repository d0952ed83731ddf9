using System.Globalization;
using System.Text.Json;
using PatternShop.Tests.Shared;
using PatternShop.Weave;

namespace PatternShop.Web.Tests;

/// <summary>Judges a facts file against the document that it was made from, worked out a second time from the definitions.</summary>
internal static class FactsForm
{
    /// <summary>Members that are promised to other programs, with the kinds of value that they may have.</summary>
    private static readonly Dictionary<string, JsonValueKind[]> Promised = new(StringComparer.Ordinal)
    {
        ["input.chart"] = [JsonValueKind.Array],
        ["input.repeats"] = [JsonValueKind.Number],
        ["input.offset"] = [JsonValueKind.Number],
        ["input.balance"] = [JsonValueKind.Number],
        ["input.floating"] = [JsonValueKind.Number],
        ["input.edges"] = [JsonValueKind.String, JsonValueKind.Null],
        ["input.firstEdge"] = [JsonValueKind.String, JsonValueKind.Null],
        ["input.start"] = [JsonValueKind.String],
        ["input.rowPlan"] = [JsonValueKind.Array],
        ["ends"] = [JsonValueKind.Number],
        ["rows"] = [JsonValueKind.Number],
        ["width.amount"] = [JsonValueKind.String],
        ["width.unit"] = [JsonValueKind.String],
        ["length.amount"] = [JsonValueKind.String],
        ["length.unit"] = [JsonValueKind.String],
        ["weavingOrder"] = [JsonValueKind.Array],
    };

    private static readonly string[] RowMembers = ["number", "chartRow", "weft", "time", "from", "runs", "text"];

    /// <summary>What the facts say wrongly or not at all; empty when all is well.</summary>
    public static IReadOnlyList<string> Faults(JsonElement facts, PatternDocument document)
    {
        var missing = Promised.Where(promise => !promise.Value.Contains(Find(facts, promise.Key).ValueKind)).Select(promise => $"not as promised: {promise.Key}").ToList();
        return missing.Count > 0 ? missing : [.. InputFaults(facts.GetProperty("input"), document), .. CountFaults(facts, document), .. RowFaults(facts, document)];
    }

    private static JsonElement Find(JsonElement from, string path) =>
        path.Split('.').Aggregate(from, (element, name) => element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var inner) ? inner : default);

    private static IEnumerable<string> InputFaults(JsonElement input, PatternDocument document)
    {
        var (width, floating) = (document.Width, document.Width.Floating);
        var chart = Enumerable.Range(0, document.Motif.Rows).Select(row => string.Concat(Enumerable.Range(0, document.Motif.Columns).Select(end => document.Motif[row, end] ? 'x' : '.')));
        return Unequal(
            ("chart", string.Join('/', chart), string.Join('/', input.GetProperty("chart").EnumerateArray())),
            ("repeats", Text(width.Repeats), Raw(input, "repeats")),
            ("offset", Text(width.Offset), Raw(input, "offset")),
            ("balance", Text(width.Balance), Raw(input, "balance")),
            ("floating", floating is null ? "0" : "1", Raw(input, "floating")),
            ("edges", floating is null ? "null" : floating.Edges == EdgeWay.Alike ? "\"alike\"" : "\"entering\"", Raw(input, "edges")),
            ("firstEdge", floating is null ? "null" : floating.First == Stroke.Over ? "\"over\"" : "\"under\"", Raw(input, "firstEdge")),
            ("start", document.Rows.Wefts[0].Start == Side.Left ? "\"left\"" : "\"right\"", Raw(input, "start")));
    }

    private static IEnumerable<string> CountFaults(JsonElement facts, PatternDocument document)
    {
        var rows = Oracle.Rows(document);
        return Unequal(
            ("ends", Text(rows[0].Over.Count), Raw(facts, "ends")),
            ("rows", Text(rows.Count), Raw(facts, "rows")),
            ("width", Length(rows[0].Over.Count, document.Gauge.Sett), Length(facts, "width")),
            ("length", Length(rows.Count, document.Gauge.Rows), Length(facts, "length")));
    }

    private static IEnumerable<string> RowFaults(JsonElement facts, PatternDocument document)
    {
        var (rows, written) = (Oracle.Rows(document), facts.GetProperty("weavingOrder").EnumerateArray().ToList());
        if (rows.Count != written.Count)
        {
            return [Text($"{written.Count} rows for {rows.Count}")];
        }

        return rows.Zip(written).SelectMany(pair => RowFaults(pair.First, pair.Second).Select(fault => Text($"row {pair.First.Number}: {fault}")));
    }

    private static IEnumerable<string> RowFaults(OracleRow row, JsonElement written)
    {
        var heading = row.From == Side.Left ? "from the left →: " : "← from the right: ";
        var text = written.GetProperty("text").GetString()!;
        var spoken = text.StartsWith(heading, StringComparison.Ordinal) ? WrittenRuns.Strokes(text[heading.Length..]) : [];
        return Unequal(
            ("members", string.Join(' ', RowMembers), string.Join(' ', written.EnumerateObject().Select(member => member.Name))),
            ("number", Text(row.Number), Raw(written, "number")),
            ("chartRow", row.ChartRow is { } chartRow ? Text(chartRow) : "null", Raw(written, "chartRow")),
            ("weft", Text(row.Weft), Raw(written, "weft")),
            ("time", row.Time is { } time ? Text(time) : "null", Raw(written, "time")),
            ("from", row.From == Side.Left ? "\"left\"" : "\"right\"", Raw(written, "from")),
            ("runs", $"[{string.Join(',', row.Runs.Select(run => Text($"[\"{(run.Over ? "over" : "under")}\",{run.Count}]")))}]", Raw(written, "runs")),
            ("text", Strokes(WrittenRuns.Strokes(row.Runs)), Strokes(spoken)));
    }

    private static IEnumerable<string> Unequal(params (string Name, string Expected, string Actual)[] values) =>
        values.Where(value => value.Expected != value.Actual).Select(value => $"{value.Name} is {value.Actual}, not {value.Expected}");

    private static string Strokes(IEnumerable<bool> strokes) => string.Concat(strokes.Select(over => over ? 'o' : 'u'));

    private static string Length(int threads, Density density)
    {
        var amount = decimal.Round(threads / density.Amount * (density.Unit == DensityUnit.PerTenCentimetres ? 10 : 1), 4, MidpointRounding.AwayFromZero);
        return $"{amount.ToString("0.####", CultureInfo.InvariantCulture)} {(density.Unit == DensityUnit.PerInch ? "in" : "cm")}";
    }

    private static string Length(JsonElement facts, string name) => $"{Find(facts, name + ".amount").GetString()} {Find(facts, name + ".unit").GetString()}";

    private static string Raw(JsonElement element, string name) => element.GetProperty(name).GetRawText();

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
