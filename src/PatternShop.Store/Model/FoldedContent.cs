using System.Buffers.Binary;

namespace PatternShop.Store;

/// <summary>
/// A document of the history as what differs from an earlier one: a stroke on a large chart takes a few bytes instead of the whole
/// chart again. Told from a whole one by its first byte, with which no packed document begins (RFC 7932, section 9.1: of the bit patterns
/// at the start of a Brotli stream, 0010001 is none).
/// </summary>
internal static class FoldedContent
{
    private const byte Mark = 0x11;
    private const int Head = (2 * sizeof(int)) + 1;

    public static bool IsFolded(ReadOnlySpan<byte> content) => content.Length > 0 && content[0] == Mark;

    /// <summary>The difference, packed: how much is the same at both ends, and what stands between; where as much stands there in both, what to turn over.</summary>
    /// <param name="canonical">What is to be kept.</param>
    /// <param name="earlier">The document from which it differs.</param>
    public static byte[] Pack(ReadOnlySpan<byte> canonical, ReadOnlySpan<byte> earlier)
    {
        var before = canonical.CommonPrefixLength(earlier);
        var after = CommonSuffixLength(canonical[before..], earlier[before..]);
        var now = canonical[before..^after];
        var then = earlier[before..^after];
        var difference = new byte[Head + now.Length];
        BinaryPrimitives.WriteInt32LittleEndian(difference, before);
        BinaryPrimitives.WriteInt32LittleEndian(difference.AsSpan(sizeof(int)), after);
        var turned = now.Length == then.Length;
        difference[Head - 1] = turned ? (byte)1 : (byte)0;
        for (var at = 0; at < now.Length; at++)
        {
            difference[Head + at] = (byte)(now[at] ^ (turned ? then[at] : 0));
        }

        return [Mark, .. DocumentContent.Pack(difference)];
    }

    /// <summary>The canonical bytes again.</summary>
    /// <param name="folded">What <see cref="Pack"/> made.</param>
    /// <param name="earlier">The same document as then.</param>
    public static byte[] Unpack(byte[] folded, ReadOnlySpan<byte> earlier)
    {
        var difference = DocumentContent.Unpack(folded[1..]);
        var before = BinaryPrimitives.ReadInt32LittleEndian(difference);
        var after = BinaryPrimitives.ReadInt32LittleEndian(difference.AsSpan(sizeof(int)));
        var middle = difference.AsSpan(Head);
        var then = earlier[before..^after];
        for (var at = 0; difference[Head - 1] == 1 && at < middle.Length; at++)
        {
            middle[at] ^= then[at];
        }

        return [.. earlier[..before], .. middle, .. earlier[^after..]];
    }

    private static int CommonSuffixLength(ReadOnlySpan<byte> one, ReadOnlySpan<byte> other)
    {
        var length = 0;
        while (length < Math.Min(one.Length, other.Length) && one[^(length + 1)] == other[^(length + 1)])
        {
            length++;
        }

        return length;
    }
}
