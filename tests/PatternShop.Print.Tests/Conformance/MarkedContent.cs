using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace PatternShop.Print.Tests;

/// <summary>The conditions on what pages paint: everything tagged or decoration, neither inside the other, every character known.</summary>
internal static partial class MarkedContent
{
    public static IEnumerable<string> Faults(QpdfObjects file)
    {
        foreach (var page in file.Pages)
        {
            var fonts = file.Of(file.Of(page["/Resources"])?["/Font"]) ?? [];
            var maps = fonts.ToDictionary(
                font => font.Key,
                font => Source().Matches(file.Content(file.Of(font.Value)?["/ToUnicode"]) ?? "").Select(match => match.Groups["from"].Value).ToHashSet(StringComparer.Ordinal),
                StringComparer.Ordinal);
            foreach (var fault in Faults(OfPage(file, page), maps))
            {
                yield return fault;
            }
        }
    }

    /// <summary>What a page paints, as text.</summary>
    public static string OfPage(QpdfObjects file, JsonObject page) =>
        string.Join('\n', (file.Value(page["/Contents"]) is JsonArray many ? [.. many] : new[] { page["/Contents"] }).Select(file.Content));

    /// <summary>The fonts that text is shown with, each with the codes of its glyphs.</summary>
    public static IEnumerable<(JsonObject Font, IReadOnlySet<int> Codes)> Shown(QpdfObjects file)
    {
        var shown = new Dictionary<JsonObject, HashSet<int>>(ReferenceEqualityComparer.Instance);
        foreach (var page in file.Pages)
        {
            var fonts = file.Of(file.Of(page["/Resources"])?["/Font"]) ?? [];
            var (font, name, operand) = ("", "", "");
            foreach (var word in Word().Matches(OfPage(file, page)).Select(match => match.Value))
            {
                name = word[0] == '/' ? word : name;
                font = word is "Tf" ? name : font;
                if (word is "Tj" && file.Of(fonts[font]) is { } used)
                {
                    if (!shown.TryGetValue(used, out var codes))
                    {
                        shown.Add(used, codes = []);
                    }

                    codes.UnionWith(Codes(operand).Select(code => Convert.ToInt32(code, 16)));
                }

                operand = word;
            }
        }

        return shown.Select(pair => (pair.Key, (IReadOnlySet<int>)pair.Value));
    }

    /// <summary>What the glyphs of a font stand for.</summary>
    public static IReadOnlyDictionary<int, string> Meaning(QpdfObjects file, JsonObject font) =>
        Source().Matches(file.Content(font["/ToUnicode"]) ?? "").ToDictionary(
            match => Convert.ToInt32(match.Groups["from"].Value, 16),
            match => Encoding.BigEndianUnicode.GetString(Convert.FromHexString(match.Groups["to"].Value)));

    private static IEnumerable<string> Faults(string content, Dictionary<string, HashSet<string>> maps)
    {
        var open = new Stack<bool>();
        var font = "";
        var operands = new List<string>();
        foreach (var word in Word().Matches(content).Select(match => match.Value))
        {
            switch (word)
            {
                case "BDC" or "BMC":
                    var artifact = operands.Exists(operand => operand == "/Artifact");
                    if (artifact ? open.Contains(false) : open.Contains(true))
                    {
                        yield return artifact ? "01-003" : "01-004";
                    }

                    open.Push(artifact);
                    break;
                case "EMC":
                    open.TryPop(out _);
                    break;
                case "Tf":
                    font = operands[^2];
                    break;
                case "Tj" or "TJ" or "f" or "F" or "f*" or "B" or "B*" or "b" or "b*" or "s" or "S" or "Do" or "sh" when open.Count == 0:
                    yield return "01-005";
                    break;
            }

            if (word is "Tj" or "TJ")
            {
                foreach (var code in operands.SelectMany(Codes))
                {
                    if (code == "0000")
                    {
                        yield return "31-030";
                    }
                    else if (maps.TryGetValue(font, out var known) && !known.Contains(code))
                    {
                        yield return "10-001";
                    }
                }
            }

            if (char.IsLetter(word[0]) || word is "'" or "\"")
            {
                operands.Clear();
            }
            else
            {
                operands.Add(word);
            }
        }
    }

    private static IEnumerable<string> Codes(string operand) =>
        operand.StartsWith('<') && !operand.StartsWith("<<", StringComparison.Ordinal) ? string.Concat(operand.Trim('<', '>').Where(char.IsAsciiHexDigit)).ToUpperInvariant().Chunk(4).Select(four => new string(four)) : [];

    [GeneratedRegex(@"<<|>>|<[0-9A-Fa-f\s]*>|\((?:\\.|[^\\()])*\)|/[^\s/<>\[\]()]+|[\[\]]|[A-Za-z'""][A-Za-z*]*|[-+.0-9]+", RegexOptions.CultureInvariant, 10_000)]
    private static partial Regex Word();

    [GeneratedRegex("<(?<from>[0-9A-F]{4})> <(?<to>[0-9A-F]{4,})>", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Source();
}
