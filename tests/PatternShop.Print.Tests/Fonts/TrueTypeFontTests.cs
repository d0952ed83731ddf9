using System.Text;
using PdfSharp.Drawing;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>Our reader of fonts, held against the PDF library's own.</summary>
public sealed class TrueTypeFontTests
{
    public static TheoryData<string> Faces { get; } = new(Typeface.All.Select(face => face.Name));

    [Theory]
    [MemberData(nameof(Faces))]
    public void Every_character_is_as_wide_as_the_library_measures(string name)
    {
        HouseFonts.Install();
        var face = Typeface.All.Single(face => face.Name == name);
        var font = new XFont(name, 1000, XFontStyleEx.Regular, new XPdfFontOptions(PdfSharp.Pdf.PdfFontEncoding.Unicode));
        using var graphics = XGraphics.CreateMeasureContext(new XSize(10, 10), XGraphicsUnit.Point, XPageDirection.Downwards);
        Assert.All(face.Font.Glyphs.Keys.Where(character => character is < 0xD800 or > 0xDFFF), character =>
        {
            var text = char.ConvertFromUtf32(character);
            Assert.Equal(graphics.MeasureString(text, font).Width, face.Width(text, 1000) * 72 / 25.4, 1.0);
        });
    }

    /// <summary>The house font has Latin letters, digits and fractions, the wide one Greek and Cyrillic; none has arrows or boxes.</summary>
    [Fact]
    public void What_the_fonts_have()
    {
        Assert.All("AZaz09Il1½×–é".EnumerateRunes(), rune => Assert.True(Typeface.Regular.Font.Has(rune) && Typeface.Bold.Font.Has(rune)));
        Assert.All("γШЖя".EnumerateRunes(), rune => Assert.True(Typeface.Wide.Font.Has(rune) && !Typeface.Regular.Font.Has(rune)));
        Assert.All("→☐中".EnumerateRunes(), rune => Assert.DoesNotContain(Typeface.All, face => face.Font.Has(rune)));
        Assert.All("10", digit => Assert.NotEqual(0, Typeface.Regular.Font.Advance(new Rune(digit))));
    }
}
