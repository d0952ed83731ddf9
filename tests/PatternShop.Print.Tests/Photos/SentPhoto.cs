using System.Buffers.Binary;
using System.Text;
using SkiaSharp;

namespace PatternShop.Print.Tests;

/// <summary>Pictures as people and attackers send them.</summary>
internal static class SentPhoto
{
    /// <summary>Red, green / blue, yellow: the quarters from the top left.</summary>
    public static IReadOnlyList<(int Red, int Green, int Blue)> Quarters { get; } = [(220, 30, 30), (30, 200, 30), (30, 30, 220), (230, 220, 40)];

    public static byte[] OfQuarters(int width, int height, SKEncodedImageFormat format = SKEncodedImageFormat.Jpeg) => Make(width, height, format, (x, y) =>
    {
        var (red, green, blue) = Quarters[(y * 2 / height * 2) + (x * 2 / width)];
        return new SKColor((byte)red, (byte)green, (byte)blue);
    });

    public static byte[] Make(int width, int height, SKEncodedImageFormat format, Func<int, int, SKColor> colour)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Unpremul))
        {
            Pixels = [.. Enumerable.Range(0, width * height).Select(at => colour(at % width, at / width))],
        };
        using var data = bitmap.Encode(format, 95);
        return data?.ToArray() ?? throw new InvalidOperationException("Not packed.");
    }

    /// <summary>A JPEG file with an Exif segment put in after its start: the way up, the camera's maker, and where it was taken (little endian; Exif 2.3, 4.6).</summary>
    public static byte[] WithExif(byte[] jpeg, int orientation)
    {
        var tiff = new byte[8 + 2 + (3 * 12) + 4 + 2 + 12 + 4 + 16];
        Encoding.ASCII.GetBytes("II*\0").CopyTo(tiff, 0);
        BinaryPrimitives.WriteUInt32LittleEndian(tiff.AsSpan(4), 8);
        BinaryPrimitives.WriteUInt16LittleEndian(tiff.AsSpan(8), 3);
        const int gps = 8 + 2 + (3 * 12) + 4;
        const int text = gps + 2 + 12 + 4;
        Entry(tiff.AsSpan(10), 0x010F, 2, 16, text);
        Entry(tiff.AsSpan(22), 0x0112, 3, 1, (uint)orientation);
        Entry(tiff.AsSpan(34), 0x8825, 4, 1, gps);
        BinaryPrimitives.WriteUInt16LittleEndian(tiff.AsSpan(gps), 1);
        Entry(tiff.AsSpan(gps + 2), 0x0001, 2, 2, 'N');
        Encoding.ASCII.GetBytes("SecretCameraGPS\0").CopyTo(tiff, text);
        return WithSegment(jpeg, 0xE1, [.. "Exif\0\0"u8, .. tiff]);
    }

    /// <summary>A JPEG file with a segment put in after its start.</summary>
    public static byte[] WithSegment(byte[] jpeg, byte marker, ReadOnlySpan<byte> content)
    {
        var length = new byte[2];
        BinaryPrimitives.WriteUInt16BigEndian(length, (ushort)(content.Length + 2));
        return [.. jpeg.AsSpan(0, 2), 0xFF, marker, .. length, .. content, .. jpeg.AsSpan(2)];
    }

    /// <summary>The head of a PNG file that claims a size, and nothing behind it (PNG 3rd edition, 11.2.1); its check sum is right.</summary>
    public static byte[] PngHead(uint width, uint height)
    {
        byte[] head = [.. "IHDR"u8, 0, 0, 0, 0, 0, 0, 0, 0, 8, 2, 0, 0, 0];
        BinaryPrimitives.WriteUInt32BigEndian(head.AsSpan(4), width);
        BinaryPrimitives.WriteUInt32BigEndian(head.AsSpan(8), height);
        byte[] sum = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(sum, Crc(head));
        return [0x89, .. "PNG\r\n\u001a\n"u8, 0, 0, 0, 13, .. head, .. sum, 0, 0, 0, 10, .. "IDAT"u8, 0x78, 0x9C, 0x63, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 0];
    }

    /// <summary>The file with another size in its frame header (ITU T.81, B.2.2).</summary>
    public static byte[] WithSize(byte[] jpeg, ushort width, ushort height)
    {
        var other = jpeg.ToArray();
        var frame = JpegParts.Of(other).Single(part => part.Marker is >= 0xC0 and <= 0xC2);
        BinaryPrimitives.WriteUInt16BigEndian(other.AsSpan(frame.Start + 1), height);
        BinaryPrimitives.WriteUInt16BigEndian(other.AsSpan(frame.Start + 3), width);
        return other;
    }

    private static void Entry(Span<byte> entry, ushort tag, ushort kind, uint count, uint value)
    {
        BinaryPrimitives.WriteUInt16LittleEndian(entry, tag);
        BinaryPrimitives.WriteUInt16LittleEndian(entry[2..], kind);
        BinaryPrimitives.WriteUInt32LittleEndian(entry[4..], count);
        if (kind == 3)
        {
            BinaryPrimitives.WriteUInt16LittleEndian(entry[8..], (ushort)value);
        }
        else
        {
            BinaryPrimitives.WriteUInt32LittleEndian(entry[8..], value);
        }
    }

    // the check of PNG, annex D
    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var one in bytes)
        {
            sum ^= one;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum & 1) == 0 ? sum >> 1 : (sum >> 1) ^ 0xEDB88320;
            }
        }

        return ~sum;
    }
}

/// <summary>A part of a JPEG file: its marker, and where its content starts and how long it is.</summary>
internal sealed record JpegPart(int Marker, int Start, int Length);

/// <summary>Takes JPEG files apart by their markers (ITU T.81, annex B), without any library.</summary>
internal static class JpegParts
{
    private const int StartOfScan = 0xDA;
    private const int End = 0xD9;

    /// <summary>The parts from the start to the end marker.</summary>
    /// <exception cref="InvalidDataException">There is no such file, or something stands behind its end.</exception>
    public static IReadOnlyList<JpegPart> Of(byte[] file)
    {
        var parts = new List<JpegPart>();
        Require(file.Length > 4 && file[0] == 0xFF && file[1] == 0xD8, "does not start");
        for (var at = 2; ;)
        {
            Require(at + 1 < file.Length && file[at] == 0xFF, "no marker");
            var marker = file[at + 1];
            if (marker == End)
            {
                Require(at + 2 == file.Length, "goes on behind its end");
                return parts;
            }

            var length = BinaryPrimitives.ReadUInt16BigEndian(file.AsSpan(at + 2)) - 2;
            parts.Add(new JpegPart(marker, at + 4, length));
            at += 4 + length;
            while (marker == StartOfScan && !(file[at] == 0xFF && file[at + 1] is not (0 or (>= 0xD0 and <= 0xD7))))
            {
                at++;
            }
        }
    }

    private static void Require(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new InvalidDataException(otherwise);
        }
    }
}
