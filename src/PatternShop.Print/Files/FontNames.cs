using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using PdfSharp.Pdf;

namespace PatternShop.Print;

/// <summary>Gives embedded fonts names that follow from what they hold, and maps from glyphs back to characters.</summary>
internal static class FontNames
{
    private const int RangesInABlock = 100;

    /// <summary>The fonts of a document by their faces, settled.</summary>
    public static IReadOnlyDictionary<Typeface, PdfDictionary> Settle(PdfDocument document, UsedCharacters used)
    {
        var fonts = new Dictionary<Typeface, PdfDictionary>();
        foreach (var font in document.Internals.GetAllObjects().OfType<PdfDictionary>().Where(IsCompositeFont).ToList())
        {
            var name = font.Elements.GetName("/BaseFont");
            var face = Typeface.All.Single(face => name.EndsWith("+" + face.LibraryName, StringComparison.Ordinal));
            var descendant = font.Elements.GetArray("/DescendantFonts")!.Elements.GetDictionary(0)!;
            var descriptor = descendant.Elements.GetDictionary("/FontDescriptor")!;
            var program = descriptor.Elements.GetDictionary("/FontFile2")!.Stream.UnfilteredValue;
            var settled = $"/{SubsetTag(program)}+{face.Name}";
            font.Elements.SetName("/BaseFont", settled);
            descendant.Elements.SetName("/BaseFont", settled);
            descriptor.Elements.SetName("/FontName", settled);
            // the library gives it as a length; it is a place below the baseline (9.8.1)
            descriptor.Elements.SetInteger("/Descent", -Math.Abs(descriptor.Elements.GetInteger("/Descent")));
            var map = font.Elements.GetDictionary("/ToUnicode")!;
            map.Elements.Remove("/Filter");
            map.Stream.Value = Encoding.ASCII.GetBytes(CharacterMap(used.CharactersByGlyph(face)));
            fonts.Add(face, font);
        }

        return fonts;
    }

    private static bool IsCompositeFont(PdfDictionary dictionary) => dictionary.Elements.GetName("/Subtype") == "/Type0";

    // Six capital letters, as ISO 32000-1, 9.6.4 asks of subsets.
    private static string SubsetTag(byte[] program) =>
        string.Concat(SHA256.HashData(program).Take(6).Select(b => (char)('A' + (b % 26))));

    private static string CharacterMap(SortedDictionary<ushort, int> characters)
    {
        var text = new StringBuilder();
        text.Append("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n");
        text.Append("/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n");
        text.Append("/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n");
        foreach (var block in characters.Chunk(RangesInABlock))
        {
            text.Append(CultureInfo.InvariantCulture, $"{block.Length} beginbfchar\n");
            foreach (var (glyph, character) in block)
            {
                text.Append(CultureInfo.InvariantCulture, $"<{glyph:X4}> <{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(char.ConvertFromUtf32(character)))}>\n");
            }

            text.Append("endbfchar\n");
        }

        return text.Append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n").ToString();
    }
}
