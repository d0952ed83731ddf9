using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace PatternShop.Print;

/// <summary>
/// The fonts of a file, cut down by the PDF library to the characters that are written with them. The library prepares fonts when it saves:
/// so a page is saved into nothing on which each character stands once; its objects are what is wanted.
/// </summary>
internal sealed class EmbeddedFonts : IDisposable
{
    private readonly Dictionary<Typeface, string> _names = [];

    private EmbeddedFonts(PdfDocument document) => Document = document;

    /// <summary>The objects of the file that is made; the fonts are among them.</summary>
    public PdfDocument Document { get; }

    /// <summary>What pages refer to: their fonts by name.</summary>
    public PdfDictionary Resources { get; private set; } = new();

    /// <summary>The name by which pages call a font.</summary>
    public string NameOf(Typeface face) => _names[face];

    public static EmbeddedFonts Of(UsedCharacters used)
    {
        HouseFonts.Install();
        var document = new PdfDocument();
        document.Options.ColorMode = PdfColorMode.Undefined;
        // streams are packed by ourselves
        document.Options.NoCompression = true;
        document.Options.CompressContentStreams = false;
        var page = document.AddPage();
        using (var graphics = XGraphics.FromPdfPage(page))
        {
            foreach (var face in used.Faces)
            {
                graphics.DrawString(used.TextOf(face), new XFont(face.Name, 10, XFontStyleEx.Regular, new XPdfFontOptions(PdfFontEncoding.Unicode)), XBrushes.Black, 0, 0);
            }
        }

        document.Save(Stream.Null, false);
        var fonts = new EmbeddedFonts(document);
        fonts.Take(used);
        return fonts;
    }

    public void Dispose() => Document.Dispose();

    private void Take(UsedCharacters used)
    {
        var byName = new PdfDictionary(Document);
        var fonts = FontNames.Settle(Document, used);
        foreach (var face in used.Faces)
        {
            _names.Add(face, string.Create(CultureInfo.InvariantCulture, $"F{_names.Count}"));
            byName.Elements.SetReference("/" + _names[face], fonts[face]);
        }

        Resources = new PdfDictionary(Document);
        Resources.Elements["/Font"] = byName;
        Document.Internals.AddObject(Resources);
    }
}
