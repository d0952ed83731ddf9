using System.Security.Cryptography;

namespace PatternShop.Weave;

/// <summary>Writes pattern documents as files.</summary>
public static class PatternWriter
{
    /// <summary>The format number that is written.</summary>
    public const int Format = DocumentTree.Format;

    /// <summary>
    /// The document in its one canonical form: UTF-8 JSON by RFC 8785. Two documents are equal exactly when these bytes are.
    /// </summary>
    /// <exception cref="ArgumentException">A text holds half a surrogate pair; <see cref="DocumentRules"/> refuses such a document.</exception>
    public static byte[] CanonicalBytes(PatternDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return JsonWriter.Canonical(DocumentTree.Of(document));
    }

    /// <summary>The same content as UTF-8 JSON for people to read and edit: indented, members in the order of the README.</summary>
    /// <exception cref="ArgumentException">As for <see cref="CanonicalBytes"/>.</exception>
    public static byte[] ReadableBytes(PatternDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return JsonWriter.Readable(DocumentTree.Of(document));
    }

    /// <summary>SHA-256 of bytes as they are stored, 64 lower-case hexadecimal digits.</summary>
    public static string Hash(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
