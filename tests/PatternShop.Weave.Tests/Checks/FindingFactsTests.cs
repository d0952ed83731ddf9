using System.Text.Json;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>Findings in the files that are made of a document: all of them in the facts, faults in the directions.</summary>
public sealed class FindingFactsTests
{
    private static readonly Wording Words = Wording.English;

    [Fact]
    public void The_facts_have_every_finding_with_its_remedies() => Law.OfDocuments(
        document =>
        {
            var piece = Piece.Of(document);
            var expected = Remedies.Of(piece).Select(advice => string.Join('\n', (string[])
            [
                Words.WeightName(advice.Finding.Weight).ToLowerInvariant(),
                Words.FindingWhat(piece, advice.Finding),
                Words.FindingWhy(piece, advice.Finding),
                $"{advice.Finding.Count} {advice.Finding.Areas.Count}",
                .. advice.Remedies.Select(remedy => $"{Words.RemedyName(remedy)}: {Words.AftermathText(piece, advice.Finding, remedy)}"),
            ]));
            Assert.Equal(expected, Findings(document).Select(Told));
        },
        small: 300,
        full: 10_000);

    [Fact]
    public void The_directions_have_a_line_for_each_fault_and_for_nothing_else() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document);
        var faults = Weave.Checks.Of(piece).Where(finding => finding.Weight == Weight.Fault).Select(fault => $"Fault: {Words.FindingWhat(piece, fault)} {Words.FindingWhy(piece, fault)}");
        var lines = WrittenDirections.Text(piece, Words).Split('\n');
        Assert.Equal(faults, lines.Where(line => line.StartsWith("Fault", StringComparison.Ordinal) || line.StartsWith("Caution", StringComparison.Ordinal) || line.StartsWith("Note:", StringComparison.Ordinal)));
        Assert.DoesNotContain(lines.Zip(lines.Skip(1)), pair => pair is { First: "", Second: "" } && document.Notes.Trim().Length == 0);
    });

    // At the left the floating end goes over in row 1, so that the float over ends 1 to 3 is four threads long with it.
    [Fact]
    public void Floats_are_judged_by_the_limits_of_the_document_and_ends_have_their_numbers()
    {
        var document = Charts.Document("xxx.x/.x.x./x.x.x", floating: new FloatingSelvedges(EdgeWay.Alike, Stroke.Over));
        Assert.Equal(["note floats"], Findings(document).Select(finding => $"{Text(finding, "severity")} {Text(finding, "kind")}"));
        var floats = Findings(document with { Limits = new Limits(3, null) }).Single();
        Assert.Equal(
            ("caution", "floats", 1, "You allow 3 threads: 3 ends here. First in row 1 at ends F–3."),
            (Text(floats, "severity"), Text(floats, "kind"), floats.GetProperty("count").GetInt32(), Text(floats, "why")));
        Assert.Equal("""[{"of":"piece","firstRow":1,"lastRow":1,"firstEnd":0,"lastEnd":3}]""", Compact(floats, "places"));
        Assert.Equal("""{"threads":3}""", Compact(Root(document with { Limits = new Limits(3, null) }).GetProperty("input"), "limits"));
        Assert.Equal("""{"length":{"amount":"0.75","unit":"in"}}""", Compact(Root(document with { Limits = new Limits(null, new Length(0.75m, LengthUnit.Inch)) }).GetProperty("input"), "limits"));
        Assert.Equal("null", Compact(Root(document).GetProperty("input"), "limits"));
    }

    [Fact]
    public void Places_in_the_motif_are_counted_from_1_too()
    {
        var loose = Findings(Charts.Document("xx.x/x.../x.x.", floating: Charts.AlikeUnder))[0];
        Assert.Equal(("fault", "looseThreads"), (Text(loose, "severity"), Text(loose, "kind")));
        Assert.Equal("""[{"of":"motif","firstRow":1,"lastRow":3,"firstEnd":1,"lastEnd":1}]""", Compact(loose, "places"));
    }

    [Fact]
    public void Faults_stand_before_the_order_of_work()
    {
        var text = WrittenDirections.Text(Piece.Of(Charts.Document("xx../.xx./..xx/x..x")), Words);
        Assert.Contains(
            "starts at the left.\n\nFault: At the left edge, the turn after row 2 is not wrapped. No turn at all goes round the outermost end there, so it can slip out.\nFault: At the right edge, ",
            text,
            StringComparison.Ordinal);
        Assert.Contains("so it can slip out.\n\nOrder of work\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Fault", WrittenDirections.Text(Piece.Of(Charts.Document("x./.x")), Words), StringComparison.Ordinal);
    }

    [Fact]
    public void The_kinds_are_those_that_the_readme_lists()
    {
        var readme = File.ReadAllText(Path.Combine(Checkout.Top, "README.md"));
        Assert.All(Enum.GetValues<CheckKind>(), kind => Assert.Contains($"| `{char.ToLowerInvariant(kind.ToString()[0])}{kind.ToString()[1..]}` | {Words.CheckName(kind)} |", readme, StringComparison.Ordinal));
    }

    private static JsonElement Root(PatternDocument document) => JsonSerializer.Deserialize<JsonElement>(PieceFacts.Json(Piece.Of(document), Words));

    private static List<JsonElement> Findings(PatternDocument document) => [.. Root(document).GetProperty("findings").EnumerateArray()];

    private static string Told(JsonElement finding) => string.Join('\n', (string[])
    [
        Text(finding, "severity"),
        Text(finding, "text"),
        Text(finding, "why"),
        $"{finding.GetProperty("count").GetInt32()} {finding.GetProperty("places").GetArrayLength()}",
        .. finding.GetProperty("remedies").EnumerateArray().Select(remedy => $"{Text(remedy, "text")}: {Text(remedy, "after")}"),
    ]);

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString()!;

    private static string Compact(JsonElement element, string name) => JsonSerializer.Serialize(element.GetProperty(name));
}
