namespace PatternShop.Weave;

/// <summary>What texts may hold: nothing that cannot be read, printed or stored. Lengths are UTF-16 units, as everywhere in text boxes.</summary>
internal static class TextRules
{
    /// <summary>A text of one line that must say something.</summary>
    public static void Line(RuleProblems problems, string pointer, string label, string text, int most)
    {
        NotEmpty(problems, pointer, label, text);
        Check(problems, pointer, label, text, most, mayBreakLines: false);
    }

    /// <summary>A text of any number of lines that must say something.</summary>
    public static void Words(RuleProblems problems, string pointer, string label, string text, int most)
    {
        NotEmpty(problems, pointer, label, text);
        Check(problems, pointer, label, text, most, mayBreakLines: true);
    }

    /// <summary>A text of any number of lines, which may be empty.</summary>
    public static void Block(RuleProblems problems, string pointer, string label, string text, int most) =>
        Check(problems, pointer, label, text, most, mayBreakLines: true);

    /// <summary>A language tag, well formed as BCP 47 asks of a tag without special cases: parts of letters and digits joined by hyphens.</summary>
    public static void Language(RuleProblems problems, string pointer, string tag)
    {
        var parts = tag.Length <= Bounds.Language ? tag.Split('-') : [];
        var formed = parts.Length > 0
            && parts[0].Length >= 2
            && parts[0].All(char.IsAsciiLetter)
            && parts.All(part => part.Length is >= 1 and <= 8 && part.All(char.IsAsciiLetterOrDigit));
        problems.Require(
            formed,
            ProblemCodes.Language,
            pointer,
            $"{Plain.Quote(tag)} is not a language tag.",
            "Write a tag such as \"en\", \"de\" or \"pt-BR\".");
    }

    private static void NotEmpty(RuleProblems problems, string pointer, string label, string text) => problems.Require(
        !string.IsNullOrWhiteSpace(text),
        ProblemCodes.TextEmpty,
        pointer,
        $"{label} is empty.",
        "Write at least one letter.");

    private static void Check(RuleProblems problems, string pointer, string label, string text, int most, bool mayBreakLines)
    {
        problems.Require(
            text.Length <= most,
            ProblemCodes.TextLength,
            pointer,
            $"{label} has {Plain.Number(text.Length)} characters, {Plain.Number(most)} are allowed.",
            "Make it shorter.");
        if (TextCharacters.FirstHidden(text, mayBreakLines) is { } hidden)
        {
            problems.Add(ProblemCodes.TextCharacter, pointer, Says(label, hidden), hidden.Remedy);
        }
    }

    /// <summary>A sentence about a character of a text.</summary>
    internal static string Says(string label, UnfitCharacter character) =>
        $"Character {Plain.Number(character.Position)} of {char.ToLowerInvariant(label[0]) + label[1..]} is {character.Name}, which {character.Why}.";
}
