using System.Text.Json;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// Where to go on in a newer version from every place of an older one, for a script that only looks up. "shifts" holds [woven, by] where what
/// is added to the number of rows woven changes: the next row is woven + by + 1. "sides" has a sign for each number of rows woven, from none
/// to all: "=" the weft lies where the next row starts, "l" it lies at the left and the row starts from the right, "r" the other way about.
/// "changes" holds [old row or 0, new row or 0, passed when so many rows are woven or -1 for never, kind]; "kinds" holds the words before and now.
/// </summary>
internal static class MovesJson
{
    public static byte[] Write(Comparison comparison, PieceDifference difference, (int From, int To) versions, Wording words)
    {
        var moves = difference.Moves();
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes))
        {
            json.WriteStartObject();
            json.WriteNumber("from", versions.From);
            json.WriteNumber("to", versions.To);
            json.WriteNumber("rows", comparison.New.Rows.Count);
            WriteShifts(json, moves);
            json.WriteString("sides", string.Concat(moves.Select(move => move.SideFits ? '=' : move.SideNow == Side.Left ? 'l' : 'r')));
            WriteChanges(json, comparison, difference);
            WriteKinds(json, comparison, words);
            json.WriteEndObject();
        }

        return bytes.ToArray();
    }

    private static void WriteShifts(Utf8JsonWriter json, Sequence<PlaceMove> moves)
    {
        json.WriteStartArray("shifts");
        int? before = null;
        foreach (var (woven, move) in moves.Index())
        {
            var by = move.Next - woven - 1;
            if (by != before)
            {
                WriteNumbers(json, woven, by);
                before = by;
            }
        }

        json.WriteEndArray();
    }

    private static void WriteChanges(Utf8JsonWriter json, Comparison comparison, PieceDifference difference)
    {
        var kinds = new Dictionary<(bool Old, int Number), int>();
        foreach (var (kind, change) in comparison.Changes.Index())
        {
            change.Old.ToList().ForEach(number => kinds[(true, number)] = kind);
            change.New.ToList().ForEach(number => kinds[(false, number)] = kind);
        }

        json.WriteStartArray("changes");
        var passed = -1;
        var lines = new List<int[]>();
        foreach (var row in difference.Rows.Reverse())
        {
            passed = row.Old ?? passed;
            if (row.Fate != RowFate.Same)
            {
                lines.Add([row.Old ?? 0, row.New ?? 0, passed, row.Old is { } old ? kinds[(true, old)] : kinds[(false, row.New!.Value)]]);
            }
        }

        lines.Reverse();
        lines.ForEach(line => WriteNumbers(json, line));
        json.WriteEndArray();
    }

    private static void WriteKinds(Utf8JsonWriter json, Comparison comparison, Wording words)
    {
        json.WriteStartArray("kinds");
        foreach (var change in comparison.Changes)
        {
            json.WriteStartArray();
            json.WriteStringValue(change.Old.Count > 0 ? words.RowText(comparison.Old, change.Old[0]) : "");
            json.WriteStringValue(change.New.Count > 0 ? words.RowText(comparison.New, change.New[0]) : "");
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void WriteNumbers(Utf8JsonWriter json, params int[] numbers)
    {
        json.WriteStartArray();
        foreach (var number in numbers)
        {
            json.WriteNumberValue(number);
        }

        json.WriteEndArray();
    }
}
