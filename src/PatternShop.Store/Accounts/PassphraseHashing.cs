using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace PatternShop.Store;

/// <summary>
/// PBKDF2 with HMAC-SHA-512. A hash says how often it went round, so that the number can be raised: 210,000 is what the
/// OWASP Password Storage Cheat Sheet asks for.
/// </summary>
internal sealed class PassphraseHashing(int rounds, PassphraseHashing.Derivation derive)
{
    /// <summary>Bytes that follow from a passphrase, at a cost that grows with the rounds.</summary>
    public delegate byte[] Derivation(string passphrase, byte[] salt, int rounds);

    private const string Kind = "pbkdf2-sha512";
    private const int SaltBytes = 16;
    private const int HashBytes = 32;

    public static PassphraseHashing Current { get; } = new(210_000, Pbkdf2);

    public static byte[] Pbkdf2(string passphrase, byte[] salt, int rounds) =>
        Rfc2898DeriveBytes.Pbkdf2(Encoding.UTF8.GetBytes(passphrase), salt, rounds, HashAlgorithmName.SHA512, HashBytes);

    /// <summary>"pbkdf2-sha512$rounds$salt$hash", the last two in base 64.</summary>
    public string Hash(string passphrase, RandomNumberGenerator random)
    {
        var salt = new byte[SaltBytes];
        random.GetBytes(salt);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{Kind}${rounds}${Convert.ToBase64String(salt)}${Convert.ToBase64String(derive(passphrase, salt, rounds))}");
    }

    public bool Verify(string passphrase, string hash)
    {
        var (salt, expected, itsRounds) = Read(hash);
        return CryptographicOperations.FixedTimeEquals(derive(passphrase, salt, itsRounds), expected);
    }

    /// <summary>Takes as long as to verify, and says nothing: for makers who do not exist.</summary>
    public void VerifyNothing(string passphrase) => derive(passphrase, new byte[SaltBytes], rounds);

    /// <summary>Whether a hash was made with fewer rounds than are asked for now.</summary>
    public bool IsWeak(string hash) => Read(hash).Rounds < rounds;

    private static (byte[] Salt, byte[] Expected, int Rounds) Read(string hash) => hash.Split('$') is [Kind, var rounds, var salt, var expected]
        ? (Convert.FromBase64String(salt), Convert.FromBase64String(expected), int.Parse(rounds, CultureInfo.InvariantCulture))
        : throw new StoreException("A stored passphrase hash has an unknown form.");
}
