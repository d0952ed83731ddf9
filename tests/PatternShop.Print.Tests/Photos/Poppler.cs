using System.Globalization;
using System.Text;

namespace PatternShop.Print.Tests;

/// <summary>Looks at JPEG files with a program of others: each on a page of a PDF written here, drawn by Poppler.</summary>
internal static class Poppler
{
    private const int Side = 64;

    /// <summary>The colours in the middles of the quarters of each picture (top left, top right, bottom left, bottom right), rounded to the nearest that tests paint with.</summary>
    public static IReadOnlyList<(int, int, int)[]> Quarters(IReadOnlyList<PhotoFile> pictures)
    {
        var folder = Directory.CreateTempSubdirectory("patternshop-");
        try
        {
            var (said, code) = OutsideTool.Run("PATTERNSHOP_PDFTOPPM", "pdftoppm", Pdf(pictures), "-r", "72", "FILE", Path.Combine(folder.FullName, "page"));
            return code == 0
                ? [.. Directory.EnumerateFiles(folder.FullName, "*.ppm").Order(StringComparer.Ordinal).Select(File.ReadAllBytes).Select(OfQuarters)]
                : throw new InvalidOperationException(said);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static (int, int, int)[] OfQuarters(byte[] ppm)
    {
        var points = ppm.AsSpan(ppm.Length - (Side * Side * 3)).ToArray();
        return [.. new[] { (16, 16), (48, 16), (16, 48), (48, 48) }.Select(at => Nearest(points, ((at.Item2 * Side) + at.Item1) * 3))];
    }

    private static (int, int, int) Nearest(byte[] points, int at) =>
        SentPhoto.Quarters.Append((255, 255, 255)).MinBy(colour => Math.Abs(colour.Item1 - points[at]) + Math.Abs(colour.Item2 - points[at + 1]) + Math.Abs(colour.Item3 - points[at + 2]));

    // PDF 1.7: a catalogue, pages, and for each picture a page, its content and the file as it is (DCTDecode)
    private static byte[] Pdf(IReadOnlyList<PhotoFile> pictures)
    {
        using var file = new MemoryStream();
        var places = new List<long>();
        Write("%PDF-1.7\n");
        Object($"<</Type/Catalog/Pages 2 0 R>>");
        Object($"<</Type/Pages/Count {pictures.Count}/Kids[{string.Join(' ', pictures.Select((_, i) => Text($"{(i * 3) + 3} 0 R")))}]>>");
        foreach (var (i, picture) in pictures.Index())
        {
            Object($"<</Type/Page/Parent 2 0 R/MediaBox[0 0 {Side} {Side}]/Contents {(i * 3) + 4} 0 R/Resources<</XObject<</P {(i * 3) + 5} 0 R>>>>>>");
            var paint = Text($"{Side} 0 0 {Side} 0 0 cm /P Do");
            Stream($"<</Length {paint.Length}>>", Encoding.ASCII.GetBytes(paint));
            Stream($"<</Type/XObject/Subtype/Image/Width {picture.Width}/Height {picture.Height}/ColorSpace/DeviceRGB/BitsPerComponent 8/Filter/DCTDecode/Length {picture.Bytes.Length}>>", picture.Bytes);
        }

        var table = file.Length;
        Write(Text($"xref\n0 {places.Count + 1}\n0000000000 65535 f \n"));
        places.ForEach(place => Write(place.ToString("D10", CultureInfo.InvariantCulture) + " 00000 n \n"));
        Write(Text($"trailer<</Size {places.Count + 1}/Root 1 0 R>>\nstartxref\n{table}\n%%EOF\n"));
        return file.ToArray();

        void Object(FormattableString content)
        {
            Begin();
            Write(Text(content) + "\nendobj\n");
        }

        void Stream(FormattableString head, byte[] content)
        {
            Begin();
            Write(Text(head) + "\nstream\n");
            file.Write(content);
            Write("\nendstream\nendobj\n");
        }

        void Begin()
        {
            places.Add(file.Length);
            Write(Text($"{places.Count} 0 obj\n"));
        }

        void Write(string text) => file.Write(Encoding.ASCII.GetBytes(text));
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
