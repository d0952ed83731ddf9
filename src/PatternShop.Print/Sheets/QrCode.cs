using PatternShop.Weave;
using QRCoder;

namespace PatternShop.Print;

/// <summary>QR codes (ISO/IEC 18004) as shapes.</summary>
internal static class QrCode
{
    /// <summary>Large enough for a phone over a table.</summary>
    private const double Module = 0.8;

    /// <summary>The code with its quiet zone of four modules around it. Level M: a quarter may be smudged by a thumb and a printer.</summary>
    public static Drawing Draw(string text)
    {
        using var code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var modules = code.ModuleMatrix;
        var dark = BitGrid.Create(modules.Count, modules.Count, (row, column) => modules[row][column]);
        var boxes = CellRectangles.Cover(dark).Select(cell => (Shape)new Box(cell.Column * Module, cell.Row * Module, cell.Columns * Module, cell.Rows * Module, Shade.Black));
        return new Drawing(modules.Count * Module, modules.Count * Module, boxes.ToSequence());
    }
}
