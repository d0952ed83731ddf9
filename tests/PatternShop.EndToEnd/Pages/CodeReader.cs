using Microsoft.Playwright;
using UglyToad.PdfPig;
using ZXing;
using ZXing.Common;

namespace PatternShop.EndToEnd;

/// <summary>Reads QR codes from pictures, as a phone does, by a library of others.</summary>
internal static class CodeReader
{
    // the browser knows how to read its own pictures; a blank page of its own keeps out of the way of the pages under test
    private const string Grey =
        """
        async picture => {
          const bytes = Uint8Array.from(atob(picture), letter => letter.charCodeAt(0));
          const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
          const canvas = new OffscreenCanvas(image.width, image.height), context = canvas.getContext('2d');
          context.drawImage(image, 0, 0);
          const { data } = context.getImageData(0, 0, image.width, image.height);
          let text = '';
          for (let i = 0; i < data.length; i += 4) { text += String.fromCharCode(Math.round((data[i] + data[i + 1] + data[i + 2]) / 3)); }
          return [String(image.width), String(image.height), btoa(text)];
        }
        """;

    /// <summary>What the code on a picture (PNG) says; null without one.</summary>
    public static async Task<string?> ReadAsync(IBrowser browser, byte[] picture)
    {
        var blank = await browser.NewPageAsync();
        try
        {
            var parts = await blank.EvaluateAsync<string[]>(Grey, Convert.ToBase64String(picture));
            int Size(int at) => int.Parse(parts[at], System.Globalization.CultureInfo.InvariantCulture);
            var source = new RGBLuminanceSource(Convert.FromBase64String(parts[2]), Size(0), Size(1), RGBLuminanceSource.BitmapFormat.Gray8);
            return new BarcodeReaderGeneric { Options = new DecodingOptions { PossibleFormats = [BarcodeFormat.QR_CODE], TryHarder = true } }.Decode(source)?.Text;
        }
        finally
        {
            await blank.CloseAsync();
        }
    }

    /// <summary>What the code on each page of a printed sheet says.</summary>
    public static async Task<IReadOnlyList<string?>> ReadSheetAsync(IBrowser browser, byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        var pages = document.NumberOfPages;
        using var folder = new DataFolder();
        await File.WriteAllBytesAsync(Path.Combine(folder.Path, "sheet.pdf"), pdf);
        using var process = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo(Programs.Pictures, ["-png", "-r", "150", "sheet.pdf", "page"]) { WorkingDirectory = folder.Path })!;
        await process.WaitForExitAsync();
        var pictures = Directory.EnumerateFiles(folder.Path, "page*.png").Order(StringComparer.Ordinal).ToList();
        Xunit.Assert.Equal((0, pages), (process.ExitCode, pictures.Count));
        var codes = new List<string?>();
        foreach (var picture in pictures)
        {
            codes.Add(await ReadAsync(browser, await File.ReadAllBytesAsync(picture)));
        }

        return codes;
    }
}
