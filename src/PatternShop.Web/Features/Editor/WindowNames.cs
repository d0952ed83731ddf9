using System.Security.Cryptography;

namespace PatternShop.Web;

/// <summary>Makes names for the fields of windows, as clients of the store: no two alike, whenever the server was started.</summary>
internal sealed class WindowNames(RandomNumberGenerator random)
{
    private const int Bytes = 12;

    public string Next()
    {
        Span<byte> bytes = stackalloc byte[Bytes];
        random.GetBytes(bytes);
        return "fields-" + Convert.ToHexStringLower(bytes);
    }
}
