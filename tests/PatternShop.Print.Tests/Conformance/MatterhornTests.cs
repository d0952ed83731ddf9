using System.Text.Json.Nodes;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>Our files fail no condition that is looked for; a file seeded with a fault fails the one that forbids it.</summary>
public sealed class MatterhornTests
{
    private static readonly VersionLine Version = new(2, new DateOnly(2026, 11, 24), "https://weave.example.org/p/0123456789/x/v/2") { Copy = new Copy("ABCD-1234", "https://weave.example.org/c/ABCD1234"), Maker = "Studio at the mill" };

    private static readonly Lazy<byte[]> Good = new(() => Printable.Make(Piece.Of(Samples.ManyScripts), Version, Paper.A4, Wording.English));

    private static readonly Dictionary<string, Action<QpdfObjects>> Seeds = new(StringComparer.Ordinal)
    {
        ["near 01: not tagged"] = file => file.Of(file.Catalog["/MarkInfo"])!.Remove("/Marked"),
        ["01-003"] = file => Content(file, text => text.Replace("/H1<</MCID 0>>BDC", "/H1<</MCID 0>>BDC\n/Artifact BMC\nEMC", StringComparison.Ordinal)),
        ["01-004"] = file => Content(file, text => ReplaceFirst(text, "/Artifact BMC", "/Artifact BMC\n/P<</MCID 0>>BDC\nEMC")),
        ["01-005"] = file => Content(file, text => text + "\n0 0 10 10 re\nf\n"),
        ["01-007"] = file => file.Of(file.Catalog["/MarkInfo"])!["/Suspects"] = true,
        ["02-001"] = file => First(file, "P")["/S"] = "/Paragraph",
        ["02-003"] = file => (First(file, "P")["/S"], file.Of(file.Catalog["/StructTreeRoot"])!["/RoleMap"]) = ("/A1", new JsonObject { ["/A1"] = "/A2", ["/A2"] = "/A1" }),
        ["02-004"] = file => file.Of(file.Catalog["/StructTreeRoot"])!["/RoleMap"] = new JsonObject { ["/P"] = "/Span" },
        ["06-001"] = file => file.Catalog.Remove("/Metadata"),
        ["06-002"] = file => Packet(file, text => text.Replace("<pdfuaid:part>1</pdfuaid:part>", "", StringComparison.Ordinal)),
        ["06-003"] = file => Packet(file, text => text.Replace("dc:title", "dc:source", StringComparison.Ordinal)),
        ["07-001"] = file => file.Of(file.Catalog["/ViewerPreferences"])!.Remove("/DisplayDocTitle"),
        ["07-002"] = file => file.Of(file.Catalog["/ViewerPreferences"])!["/DisplayDocTitle"] = false,
        ["09-004"] = file => First(file, "TR")["/S"] = "/Div",
        ["09-005"] = file => First(file, "LI")["/S"] = "/Div",
        ["10-001"] = file => Unicode(file, text => ReplaceFirst(text, "beginbfchar\n<", "beginbfchar\n<FF")),
        ["11-001"] = file => file.Catalog.Remove("/Lang"),
        ["11-002"] = file => First(file, "P")["/Lang"] = "u:not a language",
        ["11-003"] = file => file.Catalog.Remove("/Lang"),
        ["11-004"] = file => file.Catalog.Remove("/Lang"),
        ["11-006"] = file => file.Catalog.Remove("/Lang"),
        ["13-004"] = file => First(file, "Figure").Remove("/Alt"),
        ["14-002"] = file => First(file, "H1")["/S"] = "/H2",
        ["14-003"] = file => First(file, "H2")["/S"] = "/H3",
        ["15-003"] = file => First(file, "TH").Remove("/A"),
        ["near 28: not a link"] = file => Link(file)["/Subtype"] = "/Text",
        ["28-004"] = file => Link(file).Remove("/Contents"),
        ["28-008"] = file => file.Pages.ToList().ForEach(page => page.Remove("/Tabs")),
        ["28-009"] = file => file.Pages.ToList().ForEach(page => page["/Tabs"] = "/R"),
        ["28-011"] = file => First(file, "Link")["/S"] = "/Span",
        ["28-012"] = file => Link(file).Remove("/Contents"),
        ["31-004"] = file => Inner(file)["/CIDToGIDMap"] = "/Other",
        ["31-005"] = file => Inner(file).Remove("/CIDToGIDMap"),
        ["31-006"] = file => Font(file)["/Encoding"] = "/Own",
        ["31-009"] = file => file.Of(Inner(file)["/FontDescriptor"])!.Remove("/FontFile2"),
        ["near 31-011: glyph missing"] = WithoutAnOutline,
        ["31-016"] = file => file.Value(file.Value(Inner(file)["/W"])![1])![0] = file.Value(file.Value(Inner(file)["/W"])![1])![0]!.GetValue<double>() + 2,
        ["31-027"] = file => Font(file).Remove("/ToUnicode"),
        ["31-028"] = file => Unicode(file, text => System.Text.RegularExpressions.Regex.Replace(text, "> <[0-9A-F]{4}>", "> <0000>", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1))),
        ["31-029"] = file => Unicode(file, text => System.Text.RegularExpressions.Regex.Replace(text, "> <[0-9A-F]{4}>", "> <FEFF>", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1))),
        [ParentTree.Fault] = file => First(file, "P")["/K"] = 999,
        ["31-030"] = file => Content(file, text => ReplaceFirst(text, "<00", "<000000")),
    };

    public static TheoryData<string> Conditions { get; } = new(Seeds.Keys);

    public static TheoryData<string> Names { get; } = new(Samples.Names.Append("many scripts").Append("large"));

    [Theory]
    [MemberData(nameof(Names))]
    public void Our_files_fail_none(string name)
    {
        var document = name switch { "many scripts" => Samples.ManyScripts, "large" => Samples.Large, _ => Samples.All[name] };
        Assert.Empty(Matterhorn.Faults(Printable.Make(Piece.Of(document), Version, Paper.A4, Wording.English)));
    }

    [Fact]
    public void No_edition_fails_any() => Assert.All(EveryEdition.All.Values, make => Assert.Empty(Matterhorn.Faults(make())));

    [Theory]
    [MemberData(nameof(Conditions))]
    public void A_file_seeded_with_the_fault_fails(string number)
    {
        var file = QpdfObjects.Read(Good.Value);
        Seeds[number](file);
        Assert.Contains(number, Matterhorn.Faults(file.ToFile()));
    }

    [Fact]
    public void Going_through_the_other_program_alone_seeds_nothing() => Assert.Empty(Matterhorn.Faults(QpdfObjects.Read(Good.Value).ToFile()));

    /// <summary>What the reasons for not looking rest on.</summary>
    [Fact]
    public void What_is_not_looked_for_is_not_written()
    {
        var file = QpdfObjects.Read(Good.Value);
        Assert.NotEmpty(Matterhorn.NotLookedFor);
        Assert.Subset(
            new HashSet<string>(["/Type", "/Pages", "/StructTreeRoot", "/MarkInfo", "/ViewerPreferences", "/Lang", "/Metadata", "/PageLayout", "/Outlines"], StringComparer.Ordinal),
            file.Catalog.Select(entry => entry.Key).ToHashSet(StringComparer.Ordinal));
        Assert.Subset(new HashSet<string>(["/Size", "/Root", "/Info", "/ID"], StringComparer.Ordinal), file.Trailer.Select(entry => entry.Key).ToHashSet(StringComparer.Ordinal));
        Assert.All(file.Pages, page => Assert.Null(file.Of(page["/Resources"])!["/XObject"]));
        Assert.All(file.Dictionaries.Where(dictionary => dictionary["/Type"]?.ToString() == "/Font"), font =>
            Assert.Contains(font["/Subtype"]!.ToString(), (string[])["/Type0", "/CIDFontType2"]));
    }

    private static JsonObject First(QpdfObjects file, string type) =>
        StructureNode.Roots(file).SelectMany(root => root.SelfAndBelow).First(node => node.Type == type).Dictionary;

    private static JsonObject Link(QpdfObjects file) =>
        file.Of(StructureNode.Roots(file).SelectMany(root => root.SelfAndBelow).First(node => node.Annotations.Count > 0).Annotations[0])!;

    private static JsonObject Font(QpdfObjects file) => file.Dictionaries.First(dictionary => dictionary["/Subtype"]?.ToString() == "/Type0");

    private static JsonObject Inner(QpdfObjects file) => file.Of(file.Value(Font(file)["/DescendantFonts"])![0])!;

    // Of the last glyph that is shown, the outline begins where it ends (table loca of the OpenType specification).
    private static void WithoutAnOutline(QpdfObjects file)
    {
        var (font, codes) = MarkedContent.Shown(file).First();
        Change(file, file.Of(file.Of(file.Value(font["/DescendantFonts"])![0])!["/FontDescriptor"])!["/FontFile2"]!, text =>
        {
            var bytes = System.Text.Encoding.Latin1.GetBytes(text);
            var isLong = bytes[Table("head") + 51] == 1;
            var (at, size) = (Table("loca") + (codes.Max() * (isLong ? 4 : 2)), isLong ? 4 : 2);
            bytes.AsSpan(at + size, size).CopyTo(bytes.AsSpan(at, size));
            return System.Text.Encoding.Latin1.GetString(bytes);

            int Table(string tag) => System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(text.IndexOf(tag, StringComparison.Ordinal) + 8));
        });
    }

    private static void Content(QpdfObjects file, Func<string, string> change) => Change(file, file.Pages.First()["/Contents"]!, change);

    private static void Packet(QpdfObjects file, Func<string, string> change) => Change(file, file.Catalog["/Metadata"]!, change);

    private static void Unicode(QpdfObjects file, Func<string, string> change) => Change(file, Font(file)["/ToUnicode"]!, change);

    private static void Change(QpdfObjects file, JsonNode reference, Func<string, string> change)
    {
        var target = file.Value(reference) is JsonArray many ? many[0]! : reference;
        var before = file.Content(target)!;
        var after = change(before);
        Assert.NotEqual(before, after);
        file.SetContent(target, after);
    }

    private static string ReplaceFirst(string text, string what, string with)
    {
        var at = text.IndexOf(what, StringComparison.Ordinal);
        return text[..at] + with + text[(at + what.Length)..];
    }
}
