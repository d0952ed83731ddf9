using System.Globalization;
using System.Text;
using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Turns text into pieces that can be painted, measures it and breaks it into lines.</summary>
internal static class Lettering
{
    /// <summary>
    /// The pieces of a text, in order. Characters that the house font lacks come from the wide font; what that lacks too
    /// (arrows, boxes, other scripts, emoji) becomes one drawn piece a character as readers count them. Control characters are left out.
    /// </summary>
    public static Sequence<TextPiece> Pieces(string text, bool bold)
    {
        var house = House(bold);
        if (house.Has(text))
        {
            return text.Length == 0 ? [] : [new TextPiece(text, house)];
        }

        var pieces = new List<TextPiece>();
        var at = 0;
        foreach (var word in text.Split(' '))
        {
            if (at++ > 0)
            {
                Append(pieces, new TextPiece(" ", house));
            }

            AppendWord(pieces, word, house, bold);
        }

        return pieces.ToSequence();
    }

    /// <summary>The font in which text is set where it has all of it.</summary>
    public static Typeface House(bool bold) => bold ? Typeface.Bold : Typeface.Regular;

    /// <summary>Width of a text in millimetres.</summary>
    public static double Width(ReadOnlySpan<char> text, TextStyle style)
    {
        var house = House(style.Bold);
        if (house.Has(text))
        {
            return house.Width(text, style.Points);
        }

        var width = 0.0;
        foreach (var piece in Pieces(text.ToString(), style.Bold))
        {
            width += piece.Width(style);
        }

        return width;
    }

    /// <summary>
    /// Breaks a text at its spaces into lines no wider than <paramref name="width"/> millimetres; a longer word is broken
    /// between characters. At least one line; all lines together are the text: a line that ends at a space keeps it, so that
    /// words stay apart for those who hear the page.
    /// </summary>
    public static Sequence<string> Lines(string text, TextStyle style, double width)
    {
        var lines = new List<string>();
        var space = Width(" ", style);
        var (start, end, used, begun) = (0, 0, 0.0, false);
        for (var at = 0; at <= text.Length;)
        {
            var next = EndOfWord(text, at);
            var wide = Width(text.AsSpan(at, next - at), style);
            if (wide <= width)
            {
                Set(at, next, wide, false);
            }
            else
            {
                foreach (var (i, bit) in Bits(text[at..next], style, width).Index())
                {
                    Set(at, at + bit.Length, Width(bit, style), i > 0);
                    at += bit.Length;
                }
            }

            at = next + 1;
        }

        lines.Add(text[start..end]);
        return lines.ToSequence();

        void Set(int from, int to, double wide, bool glued)
        {
            if (begun && (glued || used + space + wide > width))
            {
                // the space at its end stays
                lines.Add(text[start..(glued ? end : end + 1)]);
                (used, begun) = (0, false);
            }

            (start, used) = begun ? (start, used + space + wide) : (from, wide);
            (end, begun) = (to, true);
        }
    }

    // A number stays with the word before it ("over 2", "× 3"), unless a comma parts them, and a short word such as a unit with the number before it;
    // of "0.75 to 1.25 in" both halves.
    private static int EndOfWord(string text, int from)
    {
        for (var end = Space(from); ;)
        {
            var next = end < text.Length ? Space(end + 1) : end;
            if (next == end || !StaysWith(text.AsSpan(from, end - from), text.AsSpan(end + 1, next - end - 1)))
            {
                return end;
            }

            (from, end) = (end + 1, next);
        }

        int Space(int at) => text.IndexOf(' ', at) is var found and >= 0 ? found : text.Length;
    }

    private static bool StaysWith(ReadOnlySpan<char> before, ReadOnlySpan<char> word)
    {
        if (before.Length == 0 || word.Length == 0)
        {
            return false;
        }

        var afterNumber = char.IsAsciiDigit(before[^1]);
        return word is "×"
            || (char.IsAsciiDigit(word[0]) && !afterNumber && before[^1] is not (',' or ';'))
            || (afterNumber && word is not "to" && char.IsAsciiDigit(before.TrimStart('(')[0]) && (char.IsAsciiLetter(word[0]) || word[0] == '%') && word.TrimEnd(".,;)").Length <= 2);
    }

    // A word that is too wide, in parts that are not.
    private static List<string> Bits(string word, TextStyle style, double width)
    {
        var bits = new List<string>();
        var start = 0;
        for (var characters = StringInfo.GetTextElementEnumerator(word); characters.MoveNext();)
        {
            var end = characters.ElementIndex + characters.GetTextElement().Length;
            if (characters.ElementIndex > start && Width(word.AsSpan(start, end - start), style) > width)
            {
                bits.Add(word[start..characters.ElementIndex]);
                start = characters.ElementIndex;
            }
        }

        bits.Add(word[start..]);
        return bits;
    }

    // A word is set in one font where there is one for all of it: some Greek letters are in the house font as signs.
    private static void AppendWord(List<TextPiece> pieces, string word, Typeface house, bool bold)
    {
        var wide = !house.Has(word) && Typeface.Wide.Has(word);
        for (var characters = StringInfo.GetTextElementEnumerator(word); characters.MoveNext();)
        {
            var character = characters.GetTextElement();
            if (IsVisible(character))
            {
                Append(pieces, PieceOf(character, wide ? Typeface.Wide : house, bold));
            }
        }
    }

    private static TextPiece PieceOf(string character, Typeface first, bool bold)
    {
        var face = first.Has(character) ? first : Typeface.Wide.Has(character) ? Typeface.Wide : null;
        return new TextPiece(character, face, bold && face == Typeface.Wide);
    }

    private static void Append(List<TextPiece> pieces, TextPiece next)
    {
        if (pieces.Count > 0 && next.Face is not null && pieces[^1].Face == next.Face)
        {
            pieces[^1] = pieces[^1] with { Text = pieces[^1].Text + next.Text };
        }
        else
        {
            pieces.Add(next);
        }
    }

    private static bool IsVisible(string character) =>
        Rune.GetRuneAt(character, 0) is var first && Rune.GetUnicodeCategory(first) is not (UnicodeCategory.Control or UnicodeCategory.Format);
}
