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
    public static double Width(string text, TextStyle style)
    {
        var house = House(style.Bold);
        if (house.Has(text))
        {
            return house.Width(text, style.Points);
        }

        var width = 0.0;
        foreach (var piece in Pieces(text, style.Bold))
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
        var line = new StringBuilder();
        var used = 0.0;
        var begun = false;
        foreach (var word in Words(text))
        {
            var wide = Width(word, style);
            if (wide <= width)
            {
                Set(word, wide, false);
                continue;
            }

            foreach (var bit in Bits(word, style, width))
            {
                Set(bit.Text, Width(bit.Text, style), bit.Glued);
            }
        }

        lines.Add(line.ToString());
        return lines.ToSequence();

        void Set(string word, double wide, bool glued)
        {
            if (begun && (glued || used + space + wide > width))
            {
                lines.Add(glued ? line.ToString() : line.Append(' ').ToString());
                line.Clear();
                (used, begun) = (0, false);
            }

            if (begun)
            {
                line.Append(' ');
                used += space;
            }

            line.Append(word);
            used += wide;
            begun = true;
        }
    }

    // A number stays with the word before it ("over 2", "× 3"), and a short word such as a unit with the number before it.
    private static List<string> Words(string text)
    {
        var words = new List<string>();
        var before = string.Empty;
        foreach (var word in text.Split(' '))
        {
            if (words.Count > 0 && StaysWith(before, word))
            {
                words[^1] = $"{words[^1]} {word}";
            }
            else
            {
                words.Add(word);
            }

            before = word;
        }

        return words;
    }

    private static bool StaysWith(string before, string word)
    {
        if (before.Length == 0 || word.Length == 0)
        {
            return false;
        }

        var afterNumber = char.IsAsciiDigit(before[^1]);
        return word == "×"
            || (char.IsAsciiDigit(word[0]) && !afterNumber)
            || (afterNumber && char.IsAsciiDigit(before.TrimStart('(')[0]) && (char.IsAsciiLetter(word[0]) || word[0] == '%') && word.TrimEnd('.', ',', ';', ')').Length <= 2);
    }

    // A word that is too wide, in parts that are not.
    private static List<(string Text, bool Glued)> Bits(string word, TextStyle style, double width)
    {
        var bits = new List<(string Text, bool Glued)>();
        var start = 0;
        for (var characters = StringInfo.GetTextElementEnumerator(word); characters.MoveNext();)
        {
            var end = characters.ElementIndex + characters.GetTextElement().Length;
            if (characters.ElementIndex > start && Width(word[start..end], style) > width)
            {
                bits.Add((word[start..characters.ElementIndex], bits.Count > 0));
                start = characters.ElementIndex;
            }
        }

        bits.Add((word[start..], bits.Count > 0));
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
