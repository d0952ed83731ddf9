using PdfSharp.Fonts;

namespace PatternShop.Print;

/// <summary>Hands the embedded fonts to the PDF library, which never looks at the machine's own.</summary>
internal sealed class HouseFonts : IFontResolver
{
    private static readonly Lazy<HouseFonts> Installed = new(() =>
    {
        var fonts = new HouseFonts();
        GlobalFontSettings.FontResolver = fonts;
        return fonts;
    });

    private HouseFonts()
    {
    }

    /// <summary>The library keeps one resolver for the process: set it once, whoever comes first.</summary>
    public static void Install() => _ = Installed.Value;

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        Typeface.All.Any(face => face.Name == familyName) ? new FontResolverInfo(familyName, isBold, isItalic) : null;

    public byte[]? GetFont(string faceName) => Typeface.All.FirstOrDefault(face => face.Name == faceName)?.File;
}
