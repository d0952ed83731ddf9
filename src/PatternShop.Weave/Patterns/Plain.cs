using System.Globalization;
using System.Text;

namespace PatternShop.Weave;

/// <summary>Numbers, counts and quoted texts as sentences about problems show them.</summary>
internal static class Plain
{
    private const int LongestQuote = 40;

    public static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    public static string Number(decimal number) => number.ToString("0.############################", CultureInfo.InvariantCulture);

    /// <summary>The same number without zeros at the end of its decimals.</summary>
    public static decimal WithoutZeros(decimal number) => decimal.Parse(Number(number), CultureInfo.InvariantCulture);

    /// <summary>"1 row", "2 rows".</summary>
    public static string Count(long count, string one) => $"{Number(count)} {one}{(count == 1 ? "" : "s")}";

    /// <summary>A text between quotation marks, cut when long, with characters that do not show written by their number.</summary>
    public static string Quote(string text)
    {
        var shown = new StringBuilder("\"");
        foreach (var rune in Cut(text, LongestQuote).EnumerateRunes())
        {
            _ = Shows(rune) ? shown.Append(rune.ToString()) : shown.Append(CodePoint(rune.Value));
        }

        return shown.Append('"').ToString();
    }

    /// <summary>"U+0007".</summary>
    public static string CodePoint(int value) => "U+" + value.ToString("X4", CultureInfo.InvariantCulture);

    /// <summary>At most so many UTF-16 units, never half a pair, with "…" where something was left out.</summary>
    public static string Cut(string text, int most)
    {
        if (text.Length <= most)
        {
            return text;
        }

        var length = char.IsHighSurrogate(text[most - 1]) ? most - 1 : most;
        return text[..length] + "…";
    }

    private static bool Shows(Rune rune) => Rune.GetUnicodeCategory(rune) is not (
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator
        or UnicodeCategory.ParagraphSeparator or UnicodeCategory.OtherNotAssigned or UnicodeCategory.PrivateUse);
}
