using PatternShop.Weave;
using QRCoder;

namespace PatternShop.Print;

/// <summary>A QR code (ISO/IEC 18004) as shapes, its quiet zone of four modules around it.</summary>
public static class QrPicture
{
    /// <summary>White modules on each side, without which readers may not find the code (ISO/IEC 18004).</summary>
    public const int QuietZone = 4;

    /// <summary>Modules along a side, the quiet zones counted.</summary>
    public static int Modules(string text) => Matrix(text).Columns;

    /// <summary>The code of a text.</summary>
    /// <param name="text">What it says; not empty.</param>
    /// <param name="module">Side of a module in millimetres.</param>
    public static Drawing Of(string text, double module)
    {
        var dark = Matrix(text);
        var side = dark.Columns * module;
        return new Drawing(side, side,
        [
            new Box(0, 0, side, side, Shade.White),
            .. CellRectangles.Cover(dark).Select(part => new Box(part.Column * module, part.Row * module, part.Columns * module, part.Rows * module, Shade.Black)),
        ]);
    }

    private static BitGrid Matrix(string text)
    {
        ArgumentException.ThrowIfNullOrEmpty(text);
        using var made = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        // the library adds the same quiet zone; its own is relied on nowhere
        var all = made.ModuleMatrix;
        var first = all.FindIndex(row => row.Cast<bool>().Any(isDark => isDark));
        var side = all.Count - (2 * first);
        return BitGrid.Create(side + (2 * QuietZone), side + (2 * QuietZone), (row, column) =>
            row >= QuietZone && row < side + QuietZone && column >= QuietZone && column < side + QuietZone
            && all[row - QuietZone + first][column - QuietZone + first]);
    }
}
