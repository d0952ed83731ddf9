using SkiaSharp;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>Large pictures that are made smaller while they are unpacked.</summary>
public sealed class SmallerPictureTests
{
    [Fact]
    public void Every_point_is_the_mean_of_its_square_and_edges_of_what_is_there()
    {
        using var picture = new SKBitmap(new SKImageInfo(7, 5, SKColorType.Rgba8888, SKAlphaType.Opaque));
        for (var (y, x) = (0, 0); y < picture.Height; (y, x) = x + 1 < picture.Width ? (y, x + 1) : (y + 1, 0))
        {
            picture.SetPixel(x, y, new SKColor((byte)(10 * x), (byte)(20 * y), 200));
        }

        using var smaller = Unpack(Png(picture), least: 3);
        Assert.NotNull(smaller);
        Assert.Equal((4, 3), (smaller.Width, smaller.Height));
        Assert.Equal(new SKColor(5, 10, 200), smaller.GetPixel(0, 0));
        Assert.Equal(new SKColor(45, 50, 200), smaller.GetPixel(2, 1));
        Assert.Equal(new SKColor(60, 80, 200), smaller.GetPixel(3, 2));
    }

    [Fact]
    public void A_large_picture_becomes_a_photo_and_a_torn_one_is_refused()
    {
        using var picture = new SKBitmap(new SKImageInfo(6000, 3000, SKColorType.Gray8, SKAlphaType.Opaque));
        picture.Erase(SKColors.Gray);
        var file = Png(picture);
        var made = Assert.IsType<PhotoResult.Made>(PhotoMaker.Make(file)).Photo;
        Assert.Equal((1600, 800, 400, 200), (made.Large.Width, made.Large.Height, made.Small.Width, made.Small.Height));
        using var large = SKBitmap.Decode(made.Large.Bytes);
        Assert.InRange(large.GetPixel(800, 400).Green, (byte)126, (byte)130);
        Assert.Equal("The picture is damaged, or its end is missing.", Assert.IsType<PhotoResult.Refused>(PhotoMaker.Make(file.AsSpan(0, file.Length / 2))).What);

        // the mark alone: the file is refused before anything is unpacked
        file[28] = 1;
        Assert.Equal("The picture is an interlaced PNG with more than 16 million points.", Assert.IsType<PhotoResult.Refused>(PhotoMaker.Make(Summed(file))).What);
    }

    // the head's checksum (CRC-32 of ISO 3309, as the PNG specification's annex D gives it)
    private static byte[] Summed(byte[] file)
    {
        var sum = uint.MaxValue;
        foreach (var one in file.AsSpan(12, 17))
        {
            sum ^= one;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum & 1) == 0 ? sum >> 1 : (sum >> 1) ^ 0xEDB88320;
            }
        }

        System.Buffers.Binary.BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(29, 4), ~sum);
        return file;
    }

    private static SKBitmap? Unpack(byte[] file, int least)
    {
        using var data = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(data);
        return SmallerPicture.Unpack(codec, new SKImageInfo(codec.Info.Width, codec.Info.Height, SKColorType.Rgba8888, SKAlphaType.Premul), least);
    }

    private static byte[] Png(SKBitmap picture)
    {
        using var data = picture.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
