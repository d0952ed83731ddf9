using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>What was typed at set-up, without the passphrases: those are never sent back.</summary>
public sealed record SetUpForm(string Code, string StudioName, string Handle, string Email, string TimeZone, IReadOnlyList<string> Samples)
{
    public const string PassphraseAgain = nameof(PassphraseAgain);

    /// <summary>The samples that a new shop can begin with.</summary>
    public static IReadOnlyList<string> Offered { get; } = ["first-steps", "hazel-diamonds", "mountain-and-mirror"];

    /// <summary>The form before anything was typed.</summary>
    public static SetUpForm Begin(string code) => new(code, "", "", "", TimeZones.Utc, Offered);

    internal static SetUpForm Read(IFormCollection form) => new(
        form[nameof(Code)].ToString(),
        form[nameof(StudioName)].ToString(),
        form[nameof(Handle)].ToString(),
        form[nameof(Email)].ToString(),
        form[nameof(TimeZone)].ToString(),
        [.. form[nameof(Samples)].OfType<string>().Intersect(Offered, StringComparer.Ordinal)]);

    internal NewMaker Maker(string passphrase) => new(StudioName, Handle, Email, passphrase, TimeZone);
}
