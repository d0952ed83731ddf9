using System.Text;
using System.Text.Json.Nodes;
using UglyToad.PdfPig.Fonts.TrueType;
using UglyToad.PdfPig.Fonts.TrueType.Parser;

namespace PatternShop.Print.Tests;

/// <summary>
/// The conditions on embedded font programs, read with a library that has no part in making them: every glyph that a page shows is there, and is as wide as the file says.
/// </summary>
internal static class FontPrograms
{
    // ISO 32000-1, 9.7.4.3: the width of glyphs that /W does not name, where /DW is missing
    private const double UsualWidth = 1000;

    public static IEnumerable<string> Faults(QpdfObjects file) => MarkedContent.Shown(file).SelectMany(font => OfFont(file, font.Font, font.Codes));

    private static IEnumerable<string> OfFont(QpdfObjects file, JsonObject font, IReadOnlySet<int> codes)
    {
        var inner = file.Of(file.Value(font["/DescendantFonts"])?[0]);
        if (file.Content(file.Of(inner?["/FontDescriptor"])?["/FontFile2"]) is not { } bytes)
        {
            yield break;
        }

        var program = TrueTypeFontParser.Parse(new TrueTypeDataBytes(Encoding.Latin1.GetBytes(bytes)));
        var offsets = program.TableRegister.IndexToLocationTable.GlyphOffsets;
        var (widths, usual) = Widths(file, inner!);
        var blanks = MarkedContent.Meaning(file, font).Where(pair => pair.Value.All(char.IsWhiteSpace)).Select(pair => pair.Key).ToHashSet();
        foreach (var code in codes)
        {
            if (code >= offsets.Count - 1 || (offsets[code] == offsets[code + 1] && !blanks.Contains(code)))
            {
                yield return "near 31-011: glyph missing";
                continue;
            }

            var advance = program.TableRegister.HorizontalMetricsTable.GetAdvanceWidth(code) * 1000.0 / program.TableRegister.HeaderTable.UnitsPerEm;
            if (Math.Abs(advance - widths.GetValueOrDefault(code, usual)) > 1)
            {
                yield return "31-016";
            }
        }
    }

    // 9.7.4.3: a first code and widths one by one, or a first code, a last one and the width of all.
    private static (Dictionary<int, double> Widths, double Usual) Widths(QpdfObjects file, JsonObject inner)
    {
        var widths = new Dictionary<int, double>();
        var list = file.Value(inner["/W"]) as JsonArray ?? [];
        for (var i = 0; i < list.Count;)
        {
            var first = list[i++]!.GetValue<int>();
            if (file.Value(list[i]) is JsonArray each)
            {
                foreach (var (at, width) in each.Index())
                {
                    widths[first + at] = width!.GetValue<double>();
                }

                i++;
            }
            else
            {
                var last = list[i++]!.GetValue<int>();
                for (var width = list[i++]!.GetValue<double>(); first <= last; first++)
                {
                    widths[first] = width;
                }
            }
        }

        return (widths, inner["/DW"]?.GetValue<double>() ?? UsualWidth);
    }
}
