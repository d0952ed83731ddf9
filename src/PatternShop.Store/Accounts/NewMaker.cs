namespace PatternShop.Store;

/// <summary>What a maker types at set-up.</summary>
/// <param name="StudioName">What readers see, 1 to 80 characters.</param>
/// <param name="Handle">The name in addresses: 3 to 30 lower-case letters, digits and hyphens.</param>
/// <param name="Email">For signing in; readers do not see it.</param>
/// <param name="Passphrase">15 to 200 characters of any kind.</param>
/// <param name="TimeZone">Name of the zone whose calendar dates versions carry, such as "UTC" or "Europe/Lisbon".</param>
public sealed record NewMaker(string StudioName, string Handle, string Email, string Passphrase, string TimeZone)
{
    // the passphrase must not reach a log
    public override string ToString() => $"NewMaker {Handle}";
}

/// <summary>A maker.</summary>
/// <param name="Stamp">Changes with the passphrase; a session that carries another one has ended.</param>
public sealed record Maker(MakerId Id, string StudioName, string Handle, string Email, string TimeZone, string Stamp);

/// <summary>What came of setting up.</summary>
public abstract record SetUpResult
{
    private SetUpResult()
    {
    }

    public sealed record Done(MakerId Maker) : SetUpResult;

    public sealed record WrongCode : SetUpResult;

    public sealed record AlreadySetUp : SetUpResult;

    /// <summary>Too many passphrases wait to be hashed; nothing was done.</summary>
    public sealed record Busy : SetUpResult;

    /// <param name="Problems">Everything that is wrong; at least one.</param>
    public sealed record Refused(IReadOnlyList<FieldProblem> Problems) : SetUpResult;
}

/// <summary>What came of signing in.</summary>
public abstract record SignInResult
{
    private SignInResult()
    {
    }

    public sealed record Done(Maker Maker) : SignInResult;

    /// <summary>There is no such maker, or the passphrase is another; which of the two is not told.</summary>
    public sealed record Wrong : SignInResult;

    /// <summary>Too many passphrases wait to be hashed; this one was not looked at.</summary>
    public sealed record Busy : SignInResult;
}

/// <summary>What came of giving a maker a new passphrase.</summary>
public abstract record SetPassphraseResult
{
    private SetPassphraseResult()
    {
    }

    public sealed record Done : SetPassphraseResult;

    public sealed record UnknownMaker : SetPassphraseResult;

    /// <summary>Too many passphrases wait to be hashed; nothing was done.</summary>
    public sealed record Busy : SetPassphraseResult;

    /// <param name="Problems">Everything that is wrong; at least one.</param>
    public sealed record Refused(IReadOnlyList<FieldProblem> Problems) : SetPassphraseResult;
}
