using System.IO.Compression;

namespace PatternShop.Print;

/// <summary>Packs streams as RFC 1950 asks, checksum and all; the same bytes for the same content.</summary>
internal static class Flate
{
    public const string FilterName = "/FlateDecode";

    public static byte[] Pack(ReadOnlySpan<byte> content)
    {
        using var packed = new MemoryStream((content.Length / 4) + 64);
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, true))
        {
            zlib.Write(content);
        }

        return packed.ToArray();
    }
}
