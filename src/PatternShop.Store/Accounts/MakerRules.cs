using System.Text;

namespace PatternShop.Store;

/// <summary>What may be typed about a maker. Lengths of passphrases follow NIST SP 800-63B-4: 15 or more, no rules about which characters.</summary>
public static class MakerRules
{
    public const int StudioNameMost = 80;
    public const int HandleLeast = 3;
    public const int HandleMost = 30;
    public const int EmailMost = 254;
    public const int PassphraseLeast = 15;
    public const int PassphraseMost = 200;

    private static readonly HashSet<string> Reserved = new(StringComparer.Ordinal)
    {
        "about", "account", "admin", "administrator", "api", "app", "assets", "copy", "files", "healthz", "readyz", "help", "legal", "maker", "makers", "new", "operator",
        "pattern", "patterns", "print", "privacy", "root", "samples", "set-up", "setup", "sign-in", "sign-out", "static", "studio", "support", "system", "workroom", "www",
    };

    /// <summary>Everything that is wrong, field by field; empty for a good one.</summary>
    public static IReadOnlyList<FieldProblem> Check(NewMaker maker)
    {
        ArgumentNullException.ThrowIfNull(maker);
        return
        [
            .. StudioName(maker.StudioName),
            .. Handle(maker.Handle),
            .. Email(maker.Email),
            .. Passphrase(maker.Passphrase, maker.Email, maker.StudioName),
            .. TimeZone(maker.TimeZone),
        ];
    }

    internal static IEnumerable<FieldProblem> Passphrase(string passphrase, string email, string studioName)
    {
        const string field = nameof(NewMaker.Passphrase);
        if (!IsText(passphrase))
        {
            yield return new(field, "The passphrase holds half a character.", "Type it again.");
        }
        else if (passphrase.EnumerateRunes().Count() < PassphraseLeast)
        {
            yield return new(field, Invariant($"The passphrase has fewer than {PassphraseLeast} characters."), "Make it longer; four or five words are good.");
        }
        else if (passphrase.Length > PassphraseMost)
        {
            yield return new(field, Invariant($"The passphrase has more than {PassphraseMost} characters."), "Make it shorter.");
        }
        else if (Same(passphrase, email) || Same(passphrase, studioName))
        {
            yield return new(field, "The passphrase is your e-mail address or studio name.", "Choose something that others do not know.");
        }
    }

    internal static string EmailKey(string email) => email.Trim().ToLowerInvariant();

    private static IEnumerable<FieldProblem> StudioName(string name)
    {
        const string field = nameof(NewMaker.StudioName);
        if (string.IsNullOrWhiteSpace(name))
        {
            yield return new(field, "The studio name is empty.", "Write the name that readers shall see.");
        }
        else if (name.Length > StudioNameMost)
        {
            yield return new(field, Invariant($"The studio name has more than {StudioNameMost} characters."), "Make it shorter.");
        }
        else if (FormText.Unfit(field, "the studio name", name, mayBreakLines: false) is { } unfit)
        {
            yield return unfit;
        }
    }

    private static IEnumerable<FieldProblem> Handle(string handle)
    {
        const string field = nameof(NewMaker.Handle);
        if (handle.Length is < HandleLeast or > HandleMost || !handle.All(sign => char.IsAsciiLetterLower(sign) || char.IsAsciiDigit(sign) || sign == '-'))
        {
            yield return new(field, "The handle is not usable in an address.", Invariant($"Write {HandleLeast} to {HandleMost} letters from a to z, digits and hyphens, no capitals."));
        }
        else if (Reserved.Contains(handle))
        {
            yield return new(field, $"The handle \"{handle}\" is kept for the program.", "Choose another.");
        }
    }

    private static IEnumerable<FieldProblem> Email(string email)
    {
        var parts = email.Trim().Split('@');
        if (email.Length > EmailMost || parts is not [{ Length: > 0 }, { Length: > 0 }] || FormText.Unfit(nameof(NewMaker.Email), "the address", email.Trim(), mayBreakLines: false) is not null || email.Trim().EnumerateRunes().Any(Rune.IsWhiteSpace))
        {
            yield return new(nameof(NewMaker.Email), "That is not an e-mail address.", "Write one such as name@example.org.");
        }
    }

    // a machine without zone data knows UTC only
    private static IEnumerable<FieldProblem> TimeZone(string zone)
    {
        if (zone.Length is 0 or > 64 || zone == "Local" || !TimeZoneInfo.TryFindSystemTimeZoneById(zone, out _))
        {
            yield return new(nameof(NewMaker.TimeZone), $"The time zone \"{zone}\" is not known on this machine.", "Choose one from the list, or UTC.");
        }
    }

    private static bool Same(string passphrase, string other) => string.Equals(passphrase.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);

    private static bool IsText(string text)
    {
        for (var at = 0; at < text.Length; at++)
        {
            if (char.IsSurrogate(text[at]) && !(char.IsHighSurrogate(text[at]) && at + 1 < text.Length && char.IsLowSurrogate(text[++at])))
            {
                return false;
            }
        }

        return true;
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
