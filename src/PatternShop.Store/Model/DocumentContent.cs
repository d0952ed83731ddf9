using System.IO.Compression;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>Documents as the history keeps them: canonical bytes, packed.</summary>
internal static class DocumentContent
{
    public static byte[] Pack(ReadOnlySpan<byte> canonical)
    {
        using var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            brotli.Write(canonical);
        }

        return packed.ToArray();
    }

    public static byte[] Unpack(byte[] packed)
    {
        using var brotli = new BrotliStream(new MemoryStream(packed), CompressionMode.Decompress);
        using var canonical = new MemoryStream();
        brotli.CopyTo(canonical);
        return canonical.ToArray();
    }

    /// <exception cref="StoreException">What is stored is not a document that this program can read.</exception>
    public static PatternDocument Read(ReadOnlySpan<byte> canonical) => ReadWithFormat(canonical).Document;

    /// <summary>The hash of the document's canonical bytes in the format that is written today, whatever the format of these.</summary>
    /// <exception cref="StoreException">As for <see cref="Read"/>.</exception>
    public static string HashToday(ReadOnlySpan<byte> canonical) => HashToday(canonical, ReadWithFormat(canonical));

    /// <exception cref="StoreException">As for <see cref="Read"/>.</exception>
    public static (PatternDocument Document, string HashToday) ReadAndHash(ReadOnlySpan<byte> canonical)
    {
        var read = ReadWithFormat(canonical);
        return (read.Document, HashToday(canonical, read));
    }

    private static string HashToday(ReadOnlySpan<byte> canonical, ReadResult.Read read) =>
        PatternWriter.Hash(read.Format == PatternWriter.Format ? canonical : PatternWriter.CanonicalBytes(read.Document));

    private static ReadResult.Read ReadWithFormat(ReadOnlySpan<byte> canonical) => PatternReader.ReadStored(canonical) switch
    {
        ReadResult.Read read => read,
        ReadResult.Refused refused => throw new StoreException("A stored document cannot be read: " + refused.Problems[0].What),
        var other => throw new InvalidOperationException(other.GetType().Name),
    };
}
