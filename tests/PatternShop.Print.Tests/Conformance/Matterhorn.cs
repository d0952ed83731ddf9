using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace PatternShop.Print.Tests;

/// <summary>
/// The conditions of the Matterhorn Protocol 1.02 (PDF Association: conditions under which a file fails ISO 14289-1) that a machine
/// can check and our writer could violate. Numbers and words of the conditions are from memory; those not known with certainty are
/// called by "near" and the checkpoint.
/// </summary>
internal static partial class Matterhorn
{
    /// <summary>The checkpoints, or conditions, that are not looked for, and why they cannot arise.</summary>
    public static IReadOnlyDictionary<string, string> NotLookedFor { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["05, 11-005, 25, 28-005, 28-010"] = "no sound, no forms: the catalog has no AcroForm, and the only annotations are links",
        ["09-006"] = "no table of contents is written; bookmarks lead to the sections",
        ["09-007, 09-008"] = "no ruby and no warichu: the tags are a fixed list",
        ["14-006, 14-007"] = "H without a number is not among the tags",
        ["17"] = "no formulas are written",
        ["19"] = "no notes are written",
        ["20"] = "no optional content: the catalog has no OCProperties",
        ["21"] = "no embedded files: the catalog has no Names",
        ["26"] = "nothing is encrypted: the trailer has no Encrypt",
        ["28-002, 28-006, 28-007, 28-014 to 28-018"] = "the only annotations are links",
        ["30"] = "pages refer to no XObject: QR codes and charts are drawn",
        ["31-001 to 31-003, 31-007, 31-008"] = "every font is Identity-H, which needs no collection and no embedded CMap",
        ["31-010"] = "whether a font may be embedded is for people to judge; ours are under the Open Font License",
        ["31-012 to 31-015"] = "no Type 1 font, and no CIDSet is written",
        ["31-017 to 31-026"] = "no simple TrueType font is written: every font is composite",
    };

    private static readonly string[] Standard =
    [
        "Document", "Part", "Art", "Sect", "Div", "BlockQuote", "Caption", "TOC", "TOCI", "Index", "NonStruct", "Private", "P", "H", "H1", "H2", "H3", "H4", "H5", "H6",
        "L", "LI", "Lbl", "LBody", "Table", "TR", "TH", "TD", "THead", "TBody", "TFoot", "Span", "Quote", "Note", "Reference", "BibEntry", "Code", "Link", "Annot",
        "Ruby", "RB", "RT", "RP", "Warichu", "WT", "WP", "Figure", "Formula", "Form",
    ];

    /// <summary>The numbers of the conditions that a file meets, which is bad; none for a good one.</summary>
    public static IReadOnlyList<string> Faults(byte[] bytes)
    {
        var file = QpdfObjects.Read(bytes);
        var nodes = StructureNode.Roots(file).SelectMany(root => root.SelfAndBelow).ToList();
        return [.. Document(file).Concat(Metadata(file)).Concat(Structure(file, nodes)).Concat(Annotations(file, nodes)).Concat(Fonts(file)).Concat(FontPrograms.Faults(file)).Concat(MarkedContent.Faults(file)).Concat(ParentTree.Faults(file)).Distinct().Order(StringComparer.Ordinal)];
    }

    private static IEnumerable<string> Document(QpdfObjects file)
    {
        var catalog = file.Catalog;
        if (file.Of(catalog["/MarkInfo"])?["/Suspects"]?.GetValue<bool>() == true)
        {
            yield return "01-007";
        }

        if (file.Of(catalog["/MarkInfo"])?["/Marked"]?.GetValue<bool>() != true || catalog["/StructTreeRoot"] is null)
        {
            yield return "near 01: not tagged";
        }

        var shown = file.Of(catalog["/ViewerPreferences"])?["/DisplayDocTitle"];
        if (shown is null)
        {
            yield return "07-001";
        }
        else if (!shown.GetValue<bool>())
        {
            yield return "07-002";
        }

        if (Text(catalog["/Lang"]) is not { Length: > 0 } language || !Language().IsMatch(language))
        {
            yield return "11-001";
            yield return "11-006";
            if (file.Pages.Any(page => page["/Annots"] is not null))
            {
                yield return "11-004";
            }

            if (catalog["/Outlines"] is not null)
            {
                yield return "11-003";
            }
        }
    }

    private static IEnumerable<string> Metadata(QpdfObjects file)
    {
        if (file.Content(file.Catalog["/Metadata"]) is not { } packet)
        {
            return ["06-001"];
        }

        var xmp = XDocument.Parse(System.Text.Encoding.UTF8.GetString(System.Text.Encoding.Latin1.GetBytes(packet)).Trim('\uFEFF'));
        return new[]
        {
            xmp.Descendants(XName.Get("part", "http://www.aiim.org/pdfua/ns/id/")).All(part => part.Value != "1") ? "06-002" : "",
            xmp.Descendants(XName.Get("title", "http://purl.org/dc/elements/1.1/")).All(title => title.Value.Trim().Length == 0) ? "06-003" : "",
        }.Where(fault => fault.Length > 0);
    }

    private static IEnumerable<string> Structure(QpdfObjects file, List<StructureNode> nodes)
    {
        var roles = file.Of(file.Of(file.Catalog["/StructTreeRoot"])?["/RoleMap"]) ?? [];
        foreach (var node in nodes.Where(node => !Standard.Contains(node.Type, StringComparer.Ordinal)))
        {
            yield return roles.ContainsKey("/" + node.Type) ? EndOf(roles, "/" + node.Type) : "02-001";
        }

        if (roles.Any(role => Standard.Contains(role.Key[1..], StringComparer.Ordinal)))
        {
            yield return "02-004";
        }

        foreach (var fault in nodes.SelectMany(Misplaced).Concat(Headings(nodes)))
        {
            yield return fault;
        }

        foreach (var node in nodes)
        {
            if (node.Type == "Figure" && Text(node.Dictionary["/Alt"]) is not { Length: > 0 } && Text(node.Dictionary["/ActualText"]) is not { Length: > 0 })
            {
                yield return "13-004";
            }

            if (node.Type == "TH" && node.Dictionary["/Headers"] is null && file.Of(node.Dictionary["/A"])?["/Scope"]?.ToString() is not ("/Row" or "/Column" or "/Both"))
            {
                yield return "15-003";
            }

            if (node.Dictionary["/Lang"] is { } own && !Language().IsMatch(Text(own) ?? ""))
            {
                yield return "11-002";
            }
        }
    }

    private static string EndOf(JsonObject roles, string name)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (roles[name] is { } next)
        {
            if (!seen.Add(name))
            {
                return "02-003";
            }

            name = next.ToString();
        }

        return Standard.Contains(name[1..], StringComparer.Ordinal) ? "" : "02-001";
    }

    // ISO 32000-1, tables 336 and 337
    private static IEnumerable<string> Misplaced(StructureNode node)
    {
        string[] above = node.Type switch
        {
            "TR" => ["Table", "THead", "TBody", "TFoot"],
            "TH" or "TD" => ["TR"],
            "THead" or "TBody" or "TFoot" => ["Table"],
            "LI" => ["L"],
            "LBody" => ["LI"],
            _ => [],
        };
        string[] below = node.Type switch
        {
            "Table" => ["TR", "THead", "TBody", "TFoot", "Caption"],
            "TR" => ["TH", "TD"],
            "L" => ["LI", "Caption", "L"],
            "LI" => ["Lbl", "LBody"],
            _ => [],
        };
        if ((above.Length > 0 && !above.Contains(node.Parent?.Type, StringComparer.Ordinal)) || (below.Length > 0 && node.Children.Exists(child => !below.Contains(child.Type, StringComparer.Ordinal))))
        {
            yield return node.Type is "L" or "LI" or "LBody" ? "09-005" : "09-004";
        }
    }

    private static IEnumerable<string> Headings(List<StructureNode> nodes)
    {
        var levels = nodes.Where(node => Heading().IsMatch(node.Type)).Select(node => node.Type[1] - '0').ToList();
        if (levels.Count > 0 && levels[0] != 1)
        {
            yield return "14-002";
        }

        if (levels.Zip(levels.Skip(1)).Any(pair => pair.Second > pair.First + 1))
        {
            yield return "14-003";
        }
    }

    private static IEnumerable<string> Annotations(QpdfObjects file, List<StructureNode> nodes)
    {
        foreach (var page in file.Pages.Where(page => file.Value(page["/Annots"]) is JsonArray { Count: > 0 }))
        {
            if (page["/Tabs"] is null)
            {
                yield return "28-008";
            }
            else if (page["/Tabs"]!.ToString() != "/S")
            {
                yield return "28-009";
            }

            foreach (var reference in file.Value(page["/Annots"])!.AsArray())
            {
                var annotation = file.Of(reference)!;
                if (Text(annotation["/Contents"]) is not { Length: > 0 })
                {
                    yield return "28-004";
                    yield return "28-012";
                }

                var holder = nodes.Find(node => node.Annotations.Contains(reference!.ToString(), StringComparer.Ordinal));
                if (annotation["/Subtype"]?.ToString() != "/Link")
                {
                    yield return "near 28: not a link";
                }
                else if (holder?.Type != "Link")
                {
                    yield return "28-011";
                }
            }
        }
    }

    private static IEnumerable<string> Fonts(QpdfObjects file)
    {
        foreach (var font in file.Dictionaries.Where(dictionary => dictionary["/Type"]?.ToString() == "/Font" && !dictionary["/Subtype"]!.ToString().StartsWith("/CIDFont", StringComparison.Ordinal)))
        {
            var inner = file.Of(file.Value(font["/DescendantFonts"])?[0]);
            if (font["/Encoding"]?.ToString() is not ("/Identity-H" or "/Identity-V"))
            {
                yield return "31-006";
            }

            if (inner?["/CIDToGIDMap"] is null)
            {
                yield return "31-005";
            }
            else if (inner["/CIDToGIDMap"]!.ToString() is var map && map != "/Identity" && file.Content(inner["/CIDToGIDMap"]) is null)
            {
                yield return "31-004";
            }

            if (file.Content(file.Of(inner?["/FontDescriptor"])?["/FontFile2"]) is null)
            {
                yield return "31-009";
            }

            if (file.Content(font["/ToUnicode"]) is not { } unicode)
            {
                yield return "31-027";
            }
            else if (Mapped(unicode).Any(code => code == 0))
            {
                yield return "31-028";
            }
            else if (Mapped(unicode).Any(code => code is 0xFEFF or 0xFFFE))
            {
                yield return "31-029";
            }
        }
    }

    private static IEnumerable<int> Mapped(string unicode) =>
        Pair().Matches(unicode).Select(match => Convert.ToInt32(match.Groups["to"].Value[..4], 16));

    /// <summary>A text as qpdf writes it, without its mark.</summary>
    public static string? Text(JsonNode? node) => node?.ToString() is { } text && text.StartsWith("u:", StringComparison.Ordinal) ? text[2..] : null;

    [GeneratedRegex("^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Language();

    [GeneratedRegex("^H[1-6]$", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Heading();

    [GeneratedRegex("<[0-9A-F]{4}> <(?<to>[0-9A-F]{4,})>", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Pair();
}
