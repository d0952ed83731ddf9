using System.Globalization;
using System.Text;
using PatternShop.Weave;
using UglyToad.PdfPig;
using Xunit;
using ZXing;
using ZXing.Common;

namespace PatternShop.Print.Tests;

/// <summary>Where a version is found, as its sheet says in words; and the one code on a sheet, read back from the page as a picture by a library of others.</summary>
public sealed class AddressTests
{
    private const string CopyAddress = "https://patterns.example.org/c/ABCD1234";
    private static readonly Piece Cloth = Piece.Of(Samples.Diamond);

    [Theory]
    [InlineData("https://patterns.example.org/p/0123456789/harbour-lights/v/1")]
    [InlineData("http://127.0.0.1:5080/p/vwxyz01234/a/v/12")]
    [InlineData("https://a-rather-long-name-of-a-studio.patterns.example.org/p/0123456789/a-title-of-sixty-letters-that-goes-on-and-on-and-on-and-on-a/v/123456")]
    public void Eyes_read_the_whole_address_on_one_sheet(string address)
    {
        foreach (var paper in new[] { Paper.A4, Paper.Letter })
        {
            using var pdf = PdfDocument.Open(Make(address, paper));
            Assert.Single(pdf.GetPages(), page => string.Concat(page.GetWords().Select(word => word.Text)).Contains(address, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_last_sheet_has_one_code_and_it_is_that_of_the_copy()
    {
        var file = Make("https://patterns.example.org/p/0123456789/x/v/2", Paper.A4, new Copy("ABCD-1234", CopyAddress));
        using var pdf = PdfDocument.Open(file);
        Assert.Equal([CopyAddress], Decode(file, pdf.NumberOfPages));
    }

    [Fact]
    public void Without_an_address_there_is_no_code_and_no_word_about_it()
    {
        var file = Make(null, Paper.A4);
        using var pdf = PdfDocument.Open(file);
        Assert.Empty(Decode(file, pdf.NumberOfPages));
        Assert.DoesNotContain(Wording.English.FoundTitle, string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text)), StringComparison.Ordinal);
    }

    private static byte[] Make(string? address, Paper paper, Copy? copy = null) =>
        Printable.Make(Cloth, new VersionLine(1, new DateOnly(2026, 11, 24), address) { Copy = copy }, paper, Wording.English);

    // every code on a page
    private static IReadOnlyList<string> Decode(byte[] file, int page)
    {
        var number = page.ToString(CultureInfo.InvariantCulture);
        var folder = Directory.CreateTempSubdirectory("patternshop-");
        try
        {
            var picture = Path.Combine(folder.FullName, "page");
            var (said, code) = OutsideTool.Run("PATTERNSHOP_PDFTOPPM", "pdftoppm", file, "-gray", "-r", "150", "-f", number, "-l", number, "-singlefile", "FILE", picture);
            Assert.True(code == 0, said);
            var reader = new BarcodeReaderGeneric { Options = new DecodingOptions { PossibleFormats = [BarcodeFormat.QR_CODE], TryHarder = true } };
            return [.. (reader.DecodeMultiple(Luminance(File.ReadAllBytes(picture + ".pgm"))) ?? []).Select(code => code.Text)];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    // "P5 width height 255", each ended by white space, then a byte a point
    private static RGBLuminanceSource Luminance(byte[] picture)
    {
        var head = Encoding.ASCII.GetString(picture, 0, 40).Split((char[]?)null, 5);
        var (width, height) = (int.Parse(head[1], CultureInfo.InvariantCulture), int.Parse(head[2], CultureInfo.InvariantCulture));
        return new RGBLuminanceSource(picture[^(width * height)..], width, height, RGBLuminanceSource.BitmapFormat.Gray8);
    }
}
