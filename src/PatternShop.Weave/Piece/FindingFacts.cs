using System.Text.Json;

namespace PatternShop.Weave;

/// <summary>The findings of a piece with their remedies, as a member of its facts.</summary>
internal static class FindingFacts
{
    public static void Write(Utf8JsonWriter json, Piece piece, Wording wording)
    {
        json.WriteStartArray("findings");
        foreach (var advice in Remedies.Of(piece))
        {
            WriteAdvice(json, piece, advice, wording);
        }

        json.WriteEndArray();
    }

    private static void WriteAdvice(Utf8JsonWriter json, Piece piece, Advice advice, Wording wording)
    {
        var finding = advice.Finding;
        json.WriteStartObject();
        json.WriteString("severity", Word(finding.Weight));
        json.WriteString("kind", Word(finding.Check));
        json.WriteString("text", wording.FindingWhat(piece, finding));
        json.WriteString("why", wording.FindingWhy(piece, finding));
        json.WriteNumber("count", finding.Count);
        json.WriteStartArray("places");
        foreach (var area in finding.Areas)
        {
            WriteArea(json, piece, area);
        }

        json.WriteEndArray();
        json.WriteStartArray("remedies");
        foreach (var remedy in advice.Remedies)
        {
            json.WriteStartObject();
            json.WriteString("text", wording.RemedyName(remedy));
            json.WriteString("after", wording.AftermathText(piece, finding, remedy));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    // Ends have the numbers that readers know, so the left floating end of a piece is 0 and the right one comes after the last pattern end.
    private static void WriteArea(Utf8JsonWriter json, Piece piece, Area area)
    {
        var toNumber = area.Of == AreaOf.Motif ? 1 : 1 - piece.FloatingPerSide;
        json.WriteStartObject();
        json.WriteString("of", area.Of == AreaOf.Motif ? "motif" : "piece");
        json.WriteNumber("firstRow", area.FirstRow);
        json.WriteNumber("lastRow", area.LastRow);
        json.WriteNumber("firstEnd", area.FirstEnd + toNumber);
        json.WriteNumber("lastEnd", area.LastEnd + toNumber);
        json.WriteEndObject();
    }

    private static string Word(Weight weight) => weight switch
    {
        Weight.Fault => "fault",
        Weight.Caution => "caution",
        _ => "note",
    };

    private static string Word(CheckKind check) => check switch
    {
        CheckKind.Blank => "blank",
        CheckKind.LooseThreads => "looseThreads",
        CheckKind.FallsApart => "fallsApart",
        CheckKind.IdleFloating => "idleFloating",
        CheckKind.Turns => "turns",
        CheckKind.Seam => "seam",
        CheckKind.Floats => "floats",
        CheckKind.Repeats => "repeats",
        CheckKind.Mirror => "mirror",
        _ => throw new InvalidOperationException($"No word for {check}."),
    };
}
