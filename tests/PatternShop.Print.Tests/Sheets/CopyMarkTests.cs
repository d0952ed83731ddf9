using System.Diagnostics;
using System.Globalization;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace PatternShop.Print.Tests;

/// <summary>The code at the foot of each sheet, read back by another library from the page as a picture.</summary>
public sealed class CopyMarkTests
{
    private const string Address = "https://weave.example.org/c/ABCD1234";
    private const int DotsPerInch = 150;
    private const int Resolution = 300;
    private const double Corner = 60;
    private static readonly VersionLine Version = new(2, new DateOnly(2026, 11, 24)) { Copy = new Copy("ABCD-1234", Address) };

    public static TheoryData<string> EditionNames { get; } = new(EveryEdition.WithCode);

    /// <summary>At 300 dots an inch and grey, as a worn printer and a poor camera would see it; seeds fixed, so that it is always the same noise.</summary>
    [Theory]
    [MemberData(nameof(EditionNames))]
    public void Every_sheet_of_every_edition_carries_a_code_that_another_library_reads_through_noise(string name)
    {
        var pages = Pictures(EveryEdition.All[name](), Resolution, CornerOf(EveryEdition.PaperOf(name)));
        Assert.NotEmpty(pages);
        for (var seed = 1; seed <= Effort.Of(2, 100); seed++)
        {
            Assert.All(pages, page => Assert.Equal(EveryEdition.Address, Read(Noisy(page, (uint)seed, 90))));
        }
    }

    [Fact]
    public void Every_sheet_of_a_long_edition_carries_the_code()
    {
        var pages = Pictures(Printable.Make(Piece.Of(Samples.Large), Version, Paper.A4, Wording.English), Resolution, CornerOf(Paper.A4));
        Assert.True(pages.Count > 4);
        Assert.All(pages, page => Assert.Equal(Address, Read(Noisy(page, 1, 90))));
    }

    /// <summary>Nobody has cut the sheet's corner out: the code is found among everything else on the page.</summary>
    [Fact]
    public void The_code_is_found_on_the_picture_of_a_whole_sheet()
    {
        var page = Pictures(Printable.Make(Piece.Of(Samples.Diamond), Version, Paper.A4, Wording.English), Resolution, "-l", "1")[0];
        for (var seed = 1; seed <= Effort.Of(5, 100); seed++)
        {
            Assert.Equal((seed, Address), (seed, Read(Noisy(page, (uint)seed, 90))));
        }
    }

    [Fact]
    public void More_noise_than_any_camera_has_hides_the_code_so_the_reading_can_fail()
    {
        var page = Pictures(Printable.Make(Piece.Of(Samples.Diamond), Version, Paper.A4, Wording.English), Resolution, CornerOf(Paper.A4))[0];
        Assert.Null(Read(Noisy(page, 1, 2_000)));
    }

    [Fact]
    public void Without_a_copy_or_an_address_there_is_no_code_so_the_reading_above_can_fail()
    {
        Assert.All(Pictures(Samples.Print(Samples.Diamond)), page => Assert.Null(Read(page)));
        var named = Printable.Make(Piece.Of(Samples.Diamond), Version with { Copy = new Copy("ABCD-1234", null) }, Paper.A4, Wording.English);
        Assert.All(Pictures(named), page => Assert.Null(Read(page)));
    }

    // ISO/IEC 18004: four light modules around; half a millimetre a module is a decision of ours
    [Fact]
    public void The_quiet_zone_is_four_modules_wide_and_a_module_half_a_millimetre()
    {
        var drawing = QrPicture.Of(Address, 0.5);
        Assert.Equal(QrPicture.Modules(Address) * 0.5, drawing.Width);
        var dark = drawing.Shapes.OfType<Box>().Where(box => box.Shade == Shade.Black).ToList();
        Assert.Equal(2, dark.Min(box => box.X), 6);
        Assert.Equal(2, dark.Min(box => box.Y), 6);
        Assert.Equal(drawing.Width - 2, dark.Max(box => box.X + box.Width), 6);
        // a finder pattern is seven modules wide
        Assert.Contains(dark, box => (box.X, box.Y, box.Width) == (2, 2, 3.5));
    }

    [Fact]
    public void Nothing_of_the_sheet_stands_on_the_code()
    {
        var plan = Printable.Plan(Piece.Of(Samples.Large), Version, Paper.A4, Wording.English);
        var top = Paper.A4.Height - 5 - (QrPicture.Modules(Address) * 0.5);
        Assert.All(plan.Pages, page => Assert.All(
            page.Items.Where(item => item.Tag is not null),
            item => Assert.True(item.Mark.Y + item.Mark.Extent.Bottom <= top, $"{item.Mark}")));
    }

    // Of a sheet nothing but the lower right corner, in dots.
    private static string[] CornerOf(Paper paper)
    {
        static string Dots(double millimetres) => ((int)(millimetres / 25.4 * Resolution)).ToString(CultureInfo.InvariantCulture);
        return ["-x", Dots(paper.Width - Corner), "-y", Dots(paper.Height - Corner), "-W", Dots(Corner), "-H", Dots(Corner)];
    }

    // Readers try one way after the other to tell dark from light: beside what is near first, which sees a figure here and there in noise, then beside the whole page.
    private static string? Read((byte[] Grey, int Width, int Height) page)
    {
        var source = new RGBLuminanceSource(page.Grey, page.Width, page.Height, RGBLuminanceSource.BitmapFormat.Gray8);
        var hints = new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true };
        return new Binarizer[] { new HybridBinarizer(source), new GlobalHistogramBinarizer(source) }
            .Select(dark => new QRCodeReader().decode(new BinaryBitmap(dark), hints)?.Text)
            .FirstOrDefault(text => text is not null);
    }

    private static List<(byte[] Grey, int Width, int Height)> Pictures(byte[] pdf, int dotsPerInch = DotsPerInch, params IReadOnlyList<string> part)
    {
        var folder = Directory.CreateTempSubdirectory("patternshop-");
        try
        {
            var file = Path.Combine(folder.FullName, "file.pdf");
            File.WriteAllBytes(file, pdf);
            var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("PATTERNSHOP_PDFTOPPM") ?? "pdftoppm") { UseShellExecute = false };
            foreach (var argument in (string[])["-gray", "-r", dotsPerInch.ToString(CultureInfo.InvariantCulture), .. part, file, Path.Combine(folder.FullName, "page")])
            {
                start.ArgumentList.Add(argument);
            }

            using var process = Process.Start(start)!;
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
            return [.. folder.EnumerateFiles("page*.pgm").OrderBy(page => page.Name, StringComparer.Ordinal).Select(page => Grey(File.ReadAllBytes(page.FullName)))];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    // Every dot lighter or darker by up to so much, by the generator of Numerical Recipes.
    private static (byte[] Grey, int Width, int Height) Noisy((byte[] Grey, int Width, int Height) page, uint seed, int most)
    {
        var grey = new byte[page.Grey.Length];
        for (var i = 0; i < grey.Length; i++)
        {
            seed = (seed * 1_664_525) + 1_013_904_223;
            grey[i] = (byte)Math.Clamp(page.Grey[i] + (int)(((seed >> 16) / 65_535.0 * 2 * most) - most), 0, 255);
        }

        return (grey, page.Width, page.Height);
    }

    // A portable greymap: "P5", width, height, 255, each ended by white space, then a byte a dot.
    private static (byte[] Grey, int Width, int Height) Grey(byte[] file)
    {
        var (at, words) = (0, new List<string>());
        while (words.Count < 4)
        {
            var end = Array.FindIndex(file, at, sign => char.IsWhiteSpace((char)sign));
            words.Add(System.Text.Encoding.ASCII.GetString(file[at..end]));
            at = end + 1;
        }

        Assert.Equal(("P5", "255"), (words[0], words[3]));
        return (file[at..], int.Parse(words[1], CultureInfo.InvariantCulture), int.Parse(words[2], CultureInfo.InvariantCulture));
    }
}
