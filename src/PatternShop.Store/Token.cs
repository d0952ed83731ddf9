using System.Security.Cryptography;
using System.Text;

namespace PatternShop.Store;

/// <summary>Random texts in an alphabet of 32 signs, without i, l, o and u, which are misread.</summary>
internal static class Token
{
    public const string Alphabet = "0123456789abcdefghjkmnpqrstvwxyz";

    /// <summary>50 bits.</summary>
    public const int PatternIdLength = 10;

    /// <summary>130 bits.</summary>
    public const int SecretLength = 26;

    /// <summary>How a secret is kept: its hash finds it, and does not tell it.</summary>
    public static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    public static string Make(RandomNumberGenerator random, int length)
    {
        var bytes = new byte[length];
        random.GetBytes(bytes);
        return string.Create(length, bytes, static (text, bytes) =>
        {
            for (var at = 0; at < text.Length; at++)
            {
                text[at] = Alphabet[bytes[at] % Alphabet.Length];
            }
        });
    }
}
