using PatternShop.Weave;
using SkiaSharp;

namespace PatternShop.Print;

/// <summary>The picture that a link to a pattern is shown with elsewhere: the face of the cloth, as large as it gets. The same piece gives the same bytes.</summary>
public static class LinkPicture
{
    /// <summary>Points across.</summary>
    public const int Width = 1200;

    /// <summary>Points down.</summary>
    public const int Height = 630;

    /// <summary>The kind of file.</summary>
    public const string MediaType = "image/png";

    // a point is a millimetre here
    private static readonly ClothRoom Room = new(Width, Height, Thinnest: 8, Thickest: 48) { IsFilled = true };
    private static readonly SKColor Ground = new(0xF3, 0xEC, 0xE0);
    private static readonly SKColor Paper = new(0xFF, 0xFF, 0xFF);

    /// <summary>A PNG file of <see cref="Width"/> × <see cref="Height"/> points.</summary>
    public static byte[] Png(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var drawing = ClothDrawing.Of(piece, Room);
        using var colours = SKColorSpace.CreateSrgb();
        using var surface = SKSurface.Create(new SKImageInfo(Width, Height, SKColorType.Rgba8888, SKAlphaType.Opaque, colours));
        surface.Canvas.Clear(Ground);
        // what is wider or higher than the picture is cut at the right and at the top, where the piece goes on
        surface.Canvas.Translate(Before(Width, drawing.Width, cutAtEnd: true), Before(Height, drawing.Height, cutAtEnd: false));
        foreach (var shape in drawing.Shapes)
        {
            Paint(surface.Canvas, shape);
        }

        surface.Canvas.Flush();
        using var pixels = surface.PeekPixels();
        using var data = pixels.Encode(SKPngEncoderOptions.Default);
        return data?.ToArray() ?? throw new InvalidOperationException("The picture could not be packed.");
    }

    /// <summary>Whether the picture shows the whole piece.</summary>
    public static bool ShowsAll(Piece piece) => ClothDrawing.ShowsAll(piece, Room);

    private static float Before(double room, double size, bool cutAtEnd) => size <= room ? (float)((room - size) / 2) : cutAtEnd ? 0 : (float)(room - size);

    private static void Paint(SKCanvas canvas, Shape shape)
    {
        var (area, colour) = shape switch
        {
            Box box => (SKRect.Create((float)box.X, (float)box.Y, (float)box.Width, (float)box.Height), Paper),
            Strip { X1: var x1, X2: var x2 } strip when x1 == x2 => (new SKRect((float)(x1 - (strip.Thickness / 2)), (float)strip.Y1, (float)(x2 + (strip.Thickness / 2)), (float)strip.Y2), Tone(strip)),
            Strip strip => (new SKRect((float)strip.X1, (float)(strip.Y1 - (strip.Thickness / 2)), (float)strip.X2, (float)(strip.Y2 + (strip.Thickness / 2))), Tone(strip)),
            _ => throw new InvalidOperationException($"No way to paint {shape.GetType().Name}."),
        };
        using var paint = new SKPaint { Color = colour, IsAntialias = true };
        canvas.DrawRect(area, paint);
    }

    private static SKColor Tone(Strip strip) => new(strip.OnScreen.Red, strip.OnScreen.Green, strip.OnScreen.Blue);
}
