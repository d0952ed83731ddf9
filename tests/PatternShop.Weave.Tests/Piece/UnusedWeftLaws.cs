using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>A weft that no step uses is not spoken of to readers, wherever it is listed.</summary>
public sealed partial class UnusedWeftLaws
{
    private static readonly Wording Words = Wording.English;

    [Fact]
    public void Nothing_is_said_of_wefts_that_are_listed_and_never_used() => Law.OfDocuments(
        document =>
        {
            var (piece, more) = (Piece.Of(document), Piece.Of(WithMore(document)));
            Assert.Equal(Said(piece), Said(more));
            Assert.Empty(Words.FactChanges(piece, more));
        },
        small: 300,
        full: 10_000);

    [Fact]
    public void A_weft_that_weaves_would_be_seen() => Law.CanFail(document =>
    {
        var more = WithMore(document);
        var woven = more with { Rows = more.Rows with { Steps = [.. more.Rows.Steps, new PlainRows(1, more.Rows.Wefts.Count)] } };
        Assert.Equal(Said(Piece.Of(document)), Said(Piece.Of(woven)));
    });

    [Fact]
    public void The_only_weft_that_is_used_has_no_number()
    {
        var steps = new RowStep[] { new Repeat(3, [new ChartRows(1, 2, 2), new EdgeStitch("twining", StitchYarn.Working, 1, Side.Left, 2)]), new PlainRows(1, 2) };
        var document = Charts.Document("xx../.x..", floating: Charts.AlikeUnder, steps: steps);
        document = document with
        {
            Rows = document.Rows with { Wefts = [new Weft(Side.Left), new Weft(Side.Right), new Weft(Side.Left)] },
            Cloth = ClothLook.Plain.With(1, new YarnLook(null, "plum")).With(2, new YarnLook(null, "blue")).With(3, new YarnLook(null, "green")),
        };
        var said = Said(Piece.Of(document));
        Assert.All(said, text => Assert.DoesNotMatch(NumberedWeft(), text));
        Assert.All(said, text => Assert.DoesNotContain("wefts", text, StringComparison.OrdinalIgnoreCase));
        Assert.Contains("Weft: blue", said);
        Assert.All(said, text => Assert.DoesNotContain("plum", text, StringComparison.Ordinal));
    }

    [Fact]
    public void Such_a_document_is_read_and_keeps_its_bytes() => Law.OfDocuments(
        document =>
        {
            var bytes = PatternWriter.CanonicalBytes(WithMore(document));
            Assert.Equal(bytes, PatternWriter.CanonicalBytes(Assert.IsType<ReadResult.Read>(PatternReader.Read(bytes)).Document));
        },
        small: 100,
        full: 1_000);

    // Two more wefts, of looks that would be spoken of.
    private static PatternDocument WithMore(PatternDocument document)
    {
        var wefts = document.Rows.Wefts.Count;
        return document with
        {
            Rows = document.Rows with { Wefts = [.. document.Rows.Wefts, new Weft(Side.Right), new Weft(Side.Left)] },
            Cloth = document.Cloth.With(wefts + 1, new YarnLook(new Thickness(1.25m, ThicknessUnit.Millimetres), "teal")).With(wefts + 2, new YarnLook(null, "moss")),
        };
    }

    private static List<string> Said(Piece piece)
    {
        var facts = JsonNode.Parse(PieceFacts.Json(piece, Words))!.AsObject();
        Assert.True(facts["input"]!.AsObject().Remove("starts"));
        return
        [
            WrittenDirections.Text(piece, Words),
            facts.ToJsonString(),
            SvgText.Of(ChartDrawing.Of(piece, 6, Words), piece.Document.Title, Words.ChartDescription(piece), "chart"),
            Words.ClothDescription(piece, whole: true),
            Words.WeftEstimate(piece),
            .. Words.YarnsToTake(piece.Document),
            .. Weave.Checks.Of(piece).SelectMany(finding => new[] { Words.FindingWhat(piece, finding), Words.FindingWhy(piece, finding) }),
            .. piece.Rows.Select(row => Words.RowText(piece, row.Number)),
        ];
    }

    [GeneratedRegex("weft [0-9]", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex NumberedWeft();
}
