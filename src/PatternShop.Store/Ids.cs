namespace PatternShop.Store;

/// <summary>Names a maker inside the store.</summary>
public readonly record struct MakerId(long Value);

/// <summary>Names a pattern, everywhere: ten lower-case letters and digits that say nothing and cannot be guessed.</summary>
public readonly record struct PatternId(string Value)
{
    /// <summary>Whether a text has the form of an id; the pattern need not exist.</summary>
    public static bool TryParse(string? text, out PatternId id)
    {
        var formed = text is { Length: Token.PatternIdLength } && text.All(Token.Alphabet.Contains);
        id = formed ? new PatternId(text!) : default;
        return formed;
    }

    public override string ToString() => Value;
}
