using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace PatternShop.Store;

/// <summary>
/// The short code on the sheets of one version: eight capital letters and digits, made from pattern, number and content, so that the
/// same version always has the same code. Without I, L, O and U, which are misread.
/// </summary>
public sealed record CopyCode
{
    public const int Length = 8;
    private const int Half = Length / 2;

    internal CopyCode(string value) => Value = value;

    /// <summary>As it is kept and stands in addresses.</summary>
    public string Value { get; }

    /// <summary>As people read it: two groups of four.</summary>
    public string Spaced => $"{Value[..Half]}-{Value[Half..]}";

    public static CopyCode Of(PatternId pattern, int number, string hash)
    {
        var about = SHA256.HashData(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{pattern}/{number}/{hash}")));
        return new CopyCode(string.Concat(about.Take(Length).Select(part => char.ToUpperInvariant(Token.Alphabet[part % Token.Alphabet.Length]))));
    }

    /// <summary>Whether what somebody typed has the form of a code: case, spaces and hyphens do not matter, and what is easily misread is taken for what it must be.</summary>
    public static bool TryParse(string? typed, out CopyCode? code)
    {
        const int longest = 40;
        var signs = typed is null || typed.Length > longest
            ? ""
            : string.Concat(typed.Where(sign => !char.IsWhiteSpace(sign) && sign is not ('-' or '‐' or '–')).Select(Meant));
        code = signs.Length == Length && signs.All(sign => Token.Alphabet.Contains(char.ToLowerInvariant(sign), StringComparison.Ordinal)) ? new CopyCode(signs) : null;
        return code is not null;
    }

    private static char Meant(char sign) => char.ToUpperInvariant(sign) switch
    {
        'I' or 'L' => '1',
        'O' => '0',
        var other => other,
    };
}
