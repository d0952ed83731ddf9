using System.Buffers;

namespace PatternShop.Weave;

/// <summary>
/// Addresses that may be shown as a link: https, a host of two labels or more, no user name and no port (RFC 3986, labels of RFC 1123).
/// ASCII alone, so that a host cannot pass for another by letters that look alike.
/// </summary>
internal static class WebAddress
{
    private const string Scheme = "https://";

    private static readonly SearchValues<char> Letters =
        SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~:/?#[]@!$&'()*+,;=%");

    /// <summary>The host in lower case, or null where the address is not such a one.</summary>
    public static string? Host(string address)
    {
        if (!address.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase) || address.AsSpan().ContainsAnyExcept(Letters))
        {
            return null;
        }

        var rest = address[Scheme.Length..];
        var end = rest.AsSpan().IndexOfAny('/', '?', '#');
        var labels = (end < 0 ? rest : rest[..end]).ToLowerInvariant().Split('.');
        return labels.Length >= 2 && labels.All(IsLabel) && char.IsAsciiLetter(labels[^1][0]) && EscapesAreWhole(rest) ? string.Join('.', labels) : null;
    }

    private static bool IsLabel(string label) =>
        label.Length is >= 1 and <= 63 && label[0] != '-' && label[^1] != '-' && label.All(letter => char.IsAsciiLetterOrDigit(letter) || letter == '-');

    private static bool EscapesAreWhole(string text)
    {
        for (var at = text.IndexOf('%', StringComparison.Ordinal); at >= 0; at = text.IndexOf('%', at + 1))
        {
            if (at + 2 >= text.Length || !char.IsAsciiHexDigit(text[at + 1]) || !char.IsAsciiHexDigit(text[at + 2]))
            {
                return false;
            }
        }

        return true;
    }
}
