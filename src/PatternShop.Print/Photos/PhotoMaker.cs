using SkiaSharp;

namespace PatternShop.Print;

/// <summary>A photo made anew from what was sent, in two sizes, both JPEG.</summary>
/// <param name="Large">The large picture; no side is longer than <see cref="PhotoMaker.LargeSide"/> pixels.</param>
/// <param name="Small">The small picture, for pages; no side is longer than <see cref="PhotoMaker.SmallSide"/> pixels.</param>
public sealed record MadePhoto(PhotoFile Large, PhotoFile Small);

/// <summary>A picture as a file.</summary>
/// <param name="Bytes">A JPEG file without anything but the picture.</param>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
public sealed record PhotoFile(byte[] Bytes, int Width, int Height);

/// <summary>What came of a file that was sent as a photo.</summary>
public abstract record PhotoResult
{
    private PhotoResult()
    {
    }

    public sealed record Made(MadePhoto Photo) : PhotoResult;

    /// <summary>It cannot be used.</summary>
    /// <param name="What">What is wrong.</param>
    /// <param name="Remedy">What to do about it.</param>
    public sealed record Refused(string What, string Remedy) : PhotoResult;
}

/// <summary>
/// Makes photos anew: only the points of the picture get through. Whatever else a file carries (where and when it was taken, with
/// which camera, what hangs behind its end) stays behind; the way up that it names is applied.
/// </summary>
public static class PhotoMaker
{
    /// <summary>Bytes of a file that is looked at: 16 MB.</summary>
    public const int MostBytes = 16 * 1024 * 1024;

    /// <summary>Points of a picture that is unpacked, judged by the head of the file before anything is unpacked.</summary>
    public const int MostPixels = 40_000_000;

    /// <summary>The longest side of a picture that is unpacked.</summary>
    public const int MostSide = 20_000;

    /// <summary>The longest side of the large picture.</summary>
    public const int LargeSide = 1600;

    /// <summary>The longest side of the small picture.</summary>
    public const int SmallSide = 400;

    /// <summary>Bytes of a large picture.</summary>
    public const int LargeBytes = 500_000;

    /// <summary>Bytes of a small picture.</summary>
    public const int SmallBytes = 32_000;

    /// <summary>JPEG is packed in eighths: a picture can be unpacked at any number of them.</summary>
    private const int Eighths = 8;

    /// <summary>Points of a picture that is held whole while it is made smaller; a larger one is made smaller as it is unpacked.</summary>
    private const int MostWhole = 16_000_000;

    // a PNG file says so at this place; unpacked, one is held twice, and never in parts
    private const int InterlaceByte = 28;

    private static readonly int[] Qualities = [82, 74, 66, 58, 50, 40, 30, 20, 10];

    private static readonly SKEncodedImageFormat[] Formats = [SKEncodedImageFormat.Jpeg, SKEncodedImageFormat.Png, SKEncodedImageFormat.Webp];

    /// <summary>What is said of a file that is too long to be looked at.</summary>
    public static PhotoResult.Refused TooManyBytes { get; } = new("The file has more than 16 MB.", "Choose a smaller picture, or save it smaller.");

    /// <summary>The photo, or why the file cannot be one. Never throws on input.</summary>
    public static PhotoResult Make(ReadOnlySpan<byte> file)
    {
        if (file.Length is 0 or > MostBytes)
        {
            return file.Length == 0 ? new PhotoResult.Refused("No file came with it, or an empty one.", "Choose a picture.") : TooManyBytes;
        }

        using var data = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(data);
        if (codec is null || !Formats.Contains(codec.EncodedFormat))
        {
            return new PhotoResult.Refused("The file is not a picture that can be read here.", "Choose a JPEG, PNG or WebP picture; a phone can save as JPEG.");
        }

        return TooLarge(codec.Info) ?? (IsInterlaced(codec, file) && Unpacked(codec) is var size && (long)size.Width * size.Height > MostWhole
            ? new PhotoResult.Refused("The picture is an interlaced PNG with more than 16 million points.", "Save it as JPEG or without interlacing, then choose it again.")
            : Make(codec));
    }

    private static bool IsInterlaced(SKCodec codec, ReadOnlySpan<byte> file) =>
        codec.EncodedFormat == SKEncodedImageFormat.Png && file.Length > InterlaceByte && file[InterlaceByte] != 0;

    private static PhotoResult.Refused? TooLarge(SKImageInfo info) =>
        (long)info.Width * info.Height > MostPixels || Math.Max(info.Width, info.Height) > MostSide
            ? new PhotoResult.Refused(
                FormattableString.Invariant($"The picture has {info.Width} × {info.Height} points; at most 40 million are taken, and 20,000 a side."),
                "Save it smaller, then choose it again.")
            : null;

    private static PhotoResult Make(SKCodec codec)
    {
        using var colours = SKColorSpace.CreateSrgb();
        var size = Unpacked(codec);
        var info = new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul, colours);
        using var picture = (long)size.Width * size.Height > MostWhole ? SmallerPicture.Unpack(codec, info, LargeSide) : Whole(codec, info);
        if (picture is null)
        {
            return new PhotoResult.Refused("The picture is damaged, or its end is missing.", "Open it, save it anew, and choose that file.");
        }

        // what cannot change is not copied
        picture.SetImmutable();
        using var image = SKImage.FromBitmap(picture);
        return new PhotoResult.Made(new MadePhoto(
            Drawn(image, codec.EncodedOrigin, LargeSide, LargeBytes),
            Drawn(image, codec.EncodedOrigin, SmallSide, SmallBytes)));
    }

    private static SKBitmap? Whole(SKCodec codec, SKImageInfo info)
    {
        var picture = new SKBitmap(info);
        if (codec.GetPixels(info, picture.GetPixels()) == SKCodecResult.Success)
        {
            return picture;
        }

        picture.Dispose();
        return null;
    }

    /// <summary>The size at which the picture is unpacked: no smaller than is needed, where the format can choose.</summary>
    private static SKSizeI Unpacked(SKCodec codec)
    {
        var longest = Math.Max(codec.Info.Width, codec.Info.Height);
        var eighths = Math.Clamp(((LargeSide * Eighths) + longest - 1) / longest, 1, Eighths);
        return eighths == Eighths ? codec.Info.Size : codec.GetScaledDimensions((float)eighths / Eighths);
    }

    private static PhotoFile Drawn(SKImage image, SKEncodedOrigin origin, int side, int mostBytes)
    {
        var turned = origin >= SKEncodedOrigin.LeftTop;
        var (width, height) = turned ? (image.Height, image.Width) : (image.Width, image.Height);
        var scale = Math.Min(1f, (float)side / Math.Max(width, height));
        var info = new SKImageInfo(Pixels(width * scale), Pixels(height * scale), SKColorType.Rgba8888, SKAlphaType.Premul);
        using var surface = SKSurface.Create(info);
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale((float)info.Width / width, (float)info.Height / height);
        surface.Canvas.Concat(Upright(origin, image.Width, image.Height));
        surface.Canvas.DrawImage(image, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        surface.Canvas.Flush();
        using var pixels = surface.PeekPixels();
        return new PhotoFile(Packed(pixels, mostBytes), info.Width, info.Height);
    }

    private static byte[] Packed(SKPixmap pixels, int mostBytes)
    {
        byte[] packed = [];
        foreach (var quality in Qualities)
        {
            using var data = pixels.Encode(new SKJpegEncoderOptions(quality, SKJpegEncoderDownsample.Downsample420, SKJpegEncoderAlphaOption.Ignore));
            packed = data?.ToArray() ?? throw new InvalidOperationException("The picture could not be packed.");
            if (packed.Length <= mostBytes)
            {
                break;
            }
        }

        return packed;
    }

    private static int Pixels(float length) => Math.Max(1, (int)MathF.Round(length));

    // the eight ways in which a camera may have been held (Exif 2.3, tag 0x0112)
    private static SKMatrix Upright(SKEncodedOrigin origin, float width, float height) => origin switch
    {
        SKEncodedOrigin.TopRight => new(-1, 0, width, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new(-1, 0, width, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new(1, 0, 0, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new(0, -1, height, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new(0, -1, height, -1, 0, width, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new(0, 1, 0, -1, 0, width, 0, 0, 1),
        _ => SKMatrix.Identity,
    };
}
