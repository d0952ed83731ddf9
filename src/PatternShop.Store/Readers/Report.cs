namespace PatternShop.Store;

/// <summary>What a reader says is wrong.</summary>
/// <param name="Row">Row of the weaving order; null when it is about no single row.</param>
/// <param name="Text">What is wrong.</param>
/// <param name="ReplyTo">Where the maker may write to; may be empty.</param>
public sealed record NewReport(int? Row, string Text, string ReplyTo)
{
    public const int TextMost = 2000;
    public const int ReplyToMost = 200;

    /// <summary>What is wrong with it; empty when it can be sent.</summary>
    public IReadOnlyList<FieldProblem> Check() =>
    [
        .. Check(nameof(Text), "the text", Text, TextMost),
        .. Text.Trim().Length == 0 ? [new FieldProblem(nameof(Text), "Nothing is written.", "Say what is wrong.")] : Array.Empty<FieldProblem>(),
        .. Check(nameof(ReplyTo), "the address", ReplyTo, ReplyToMost, mayBreakLines: false),
    ];

    /// <summary>Whether a text of a form is short enough and can be shown.</summary>
    internal static IEnumerable<FieldProblem> Check(string field, string label, string text, int most, bool mayBreakLines = true)
    {
        if (text.Length > most)
        {
            yield return new FieldProblem(field, FormattableString.Invariant($"This has more than {most} characters."), "Make it shorter.");
        }

        if (FormText.Unfit(field, label, text, mayBreakLines) is { } unfit)
        {
            yield return unfit;
        }
    }
}

/// <summary>A report as the maker and whoever sent it see it.</summary>
/// <param name="Number">The version that it is about.</param>
/// <param name="Answer">What the maker answered; null while they have not.</param>
public sealed record Report(
    long Id, PatternId Pattern, string Title, int Number, int? Row, string Text, string ReplyTo, DateTimeOffset SentAt, string? Answer, DateTimeOffset? AnsweredAt)
{
    /// <summary>The newest correction that says it answers this report; null when there is none. Only known to whoever sent the report, and readers may not see the version now.</summary>
    public int? CorrectedIn { get; init; }
}

/// <summary>What came of sending a report.</summary>
public abstract record SendResult
{
    private SendResult()
    {
    }

    /// <summary>It lies on the maker's desk.</summary>
    /// <param name="Secret">Finds it again; kept nowhere.</param>
    public sealed record Sent(string Secret) : SendResult;

    /// <summary>Readers have no such version.</summary>
    public sealed record Missing : SendResult;

    /// <summary>So many reports wait for an answer that no more are taken.</summary>
    public sealed record Full : SendResult;

    /// <param name="Problems">Everything that is wrong; at least one.</param>
    public sealed record Refused(IReadOnlyList<FieldProblem> Problems) : SendResult;
}
