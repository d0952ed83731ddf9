using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>What words that somebody types into a form may hold.</summary>
internal static class FormText
{
    // where the browser's bytes were no text
    private const char Replacement = '\uFFFD';

    /// <summary>Returns the problem of a text that holds a character which cannot be shown or which turns the words after it around; null when it holds none.</summary>
    /// <param name="field">The form's field.</param>
    /// <param name="label">The text's name in the middle of a sentence, such as "the note".</param>
    /// <param name="text">What was typed.</param>
    /// <param name="mayBreakLines">Whether it may hold new lines and tabs.</param>
    public static FieldProblem? Unfit(string field, string label, string text, bool mayBreakLines)
    {
        if ((TextCharacters.FirstHidden(text, mayBreakLines) ?? TextCharacters.FirstTurning(text)) is { } unfit)
        {
            return new FieldProblem(field, FormattableString.Invariant($"Character {unfit.Position} of {label} is {unfit.Name}, which {unfit.Why}."), unfit.Remedy);
        }

        var at = text.IndexOf(Replacement, StringComparison.Ordinal);
        return at < 0
            ? null
            : new FieldProblem(field, FormattableString.Invariant($"Character {at + 1} of {label} did not arrive as it was typed."), "Type it again.");
    }
}
