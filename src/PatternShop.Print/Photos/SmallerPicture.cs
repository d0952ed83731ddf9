using SkiaSharp;

namespace PatternShop.Print;

/// <summary>Makes a large picture smaller while it is unpacked, a band of rows at a time, so that it is never held whole.</summary>
internal static class SmallerPicture
{
    private const int Channels = 4;

    /// <summary>Points that are unpacked at once.</summary>
    private const int BandPoints = 8_000_000;

    /// <summary>Returns the picture with each square of points averaged into one, so that the longest side keeps the least length; null where the file is damaged.</summary>
    /// <param name="codec">The file, nothing of it unpacked yet.</param>
    /// <param name="info">Its own size, with 8 bits each of red, green, blue and opacity.</param>
    /// <param name="least">Pixels that the longest side must have at the end.</param>
    public static SKBitmap? Unpack(SKCodec codec, SKImageInfo info, int least)
    {
        var side = Math.Max(1, Math.Max(info.Width, info.Height) / least);
        var picture = new SKBitmap(info.WithSize((info.Width + side - 1) / side, (info.Height + side - 1) / side));
        var squares = Math.Max(1, BandPoints / (info.Width * side));
        using var band = new SKBitmap(info.WithSize(info.Width, Math.Min(info.Height, squares * side)));
        for (var first = 0; first < picture.Height; first += squares)
        {
            var rows = new SKRectI(0, first * side, info.Width, Math.Min(info.Height, (first + squares) * side));
            if (!Decode(codec, info, rows, band))
            {
                picture.Dispose();
                return null;
            }

            for (var top = rows.Top; top < rows.Bottom; top += side)
            {
                var lines = Math.Min(side, rows.Bottom - top);
                Average(band.GetPixelSpan()[((top - rows.Top) * band.RowBytes)..], band.RowBytes, (info.Width, lines), side, picture.GetPixelSpan().Slice(top / side * picture.RowBytes, picture.RowBytes));
            }
        }

        return picture;
    }

    // the file is read from its beginning for each band: a few times more work, and a fraction of the memory
    private static bool Decode(SKCodec codec, SKImageInfo info, SKRectI rows, SKBitmap band) =>
        codec.StartIncrementalDecode(info, band.GetPixels(), band.RowBytes, new SKCodecOptions(rows)) == SKCodecResult.Success
        && codec.IncrementalDecode(out _) == SKCodecResult.Success;

    private static void Average(ReadOnlySpan<byte> band, int rowBytes, (int Width, int Lines) size, int side, Span<byte> averaged)
    {
        for (var (x, at) = (0, 0); x < size.Width; x += side)
        {
            var across = Math.Min(side, size.Width - x);
            var count = across * size.Lines;
            for (var channel = 0; channel < Channels; channel++, at++)
            {
                var sum = count / 2;
                for (var y = 0; y < size.Lines; y++)
                {
                    var line = band.Slice((y * rowBytes) + (x * Channels) + channel, ((across - 1) * Channels) + 1);
                    for (var point = 0; point < line.Length; point += Channels)
                    {
                        sum += line[point];
                    }
                }

                averaged[at] = (byte)(sum / count);
            }
        }
    }
}
