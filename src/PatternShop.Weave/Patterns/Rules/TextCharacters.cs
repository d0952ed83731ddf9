using System.Buffers;
using System.Globalization;
using System.Text;

namespace PatternShop.Weave;

/// <summary>A character that a text must not hold.</summary>
/// <param name="Position">Its place in the text in UTF-16 units, from 1.</param>
/// <param name="Name">Its code point, such as "U+202E".</param>
/// <param name="Why">What is wrong with it, to be said after "which".</param>
/// <param name="Remedy">What to do about it.</param>
public sealed record UnfitCharacter(int Position, string Name, string Why, string Remedy);

/// <summary>Finds characters that do harm in words that others read.</summary>
public static class TextCharacters
{
    // embeddings, overrides and isolates (Unicode Standard Annex 9). The marks U+200E, U+200F and U+061C stay: keyboards of scripts that run
    // from the right type them, and they turn nothing but punctuation beside them.
    private static readonly SearchValues<char> Turning = SearchValues.Create("\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069");

    /// <summary>
    /// The first character that cannot be shown: control characters, half a surrogate pair, noncharacters, separators of lines and paragraphs. Null when there is none.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="mayBreakLines">Whether it may hold new lines and tabs.</param>
    public static UnfitCharacter? FirstHidden(string text, bool mayBreakLines)
    {
        ArgumentNullException.ThrowIfNull(text);
        for (int at = 0, used; at < text.Length; at += used)
        {
            var status = Rune.DecodeFromUtf16(text.AsSpan(at), out var rune, out used);
            if (status != OperationStatus.Done || !IsShown(rune, mayBreakLines))
            {
                return new UnfitCharacter(
                    at + 1,
                    Plain.CodePoint(status == OperationStatus.Done ? rune.Value : text[at]),
                    "cannot be shown",
                    mayBreakLines ? "Remove it; lines end with a plain new line." : "Remove it, or replace it by a space.");
            }
        }

        return null;
    }

    /// <summary>
    /// The first character that is not seen but turns the direction of what is read after it: words could read otherwise than they are written. Null when there is none.
    /// </summary>
    public static UnfitCharacter? FirstTurning(string text)
    {
        var at = text.AsSpan().IndexOfAny(Turning);
        return at < 0
            ? null
            : new UnfitCharacter(at + 1, Plain.CodePoint(text[at]), "can't be seen and changes the direction of the words after it", "Remove it: delete the words around it and type them again.");
    }

    private static bool IsShown(Rune rune, bool mayBreakLines) => rune.Value switch
    {
        '\n' or '\t' => mayBreakLines,
        >= 0xFDD0 and <= 0xFDEF => false,
        _ when (rune.Value & 0xFFFE) == 0xFFFE => false,
        _ => Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator),
    };
}
