using System.Text;

namespace PatternShop.Print;

/// <summary>Which characters are written with which font; a file's fonts are cut down to them, and its text is found by them.</summary>
internal sealed class UsedCharacters
{
    private readonly Dictionary<Typeface, SortedSet<int>> _used = [];

    /// <summary>The fonts that are written with, always in the same order.</summary>
    public IEnumerable<Typeface> Faces => Typeface.All.Where(_used.ContainsKey);

    public static UsedCharacters Of(PrintPlan plan)
    {
        var used = new UsedCharacters();
        foreach (var page in plan.Pages)
        {
            foreach (var item in page.Items)
            {
                if (item.Mark is TextMark { Piece: { Face: { } face } piece })
                {
                    used.Add(face, piece.Text);
                }
            }
        }

        return used;
    }

    /// <summary>Every character of a font once.</summary>
    public string TextOf(Typeface face) => string.Concat(_used[face].Select(character => new Rune(character).ToString()));

    /// <summary>For each glyph of a font, by number, the character that it was written for: the lowest if there are several.</summary>
    public SortedDictionary<ushort, int> CharactersByGlyph(Typeface face)
    {
        var characters = new SortedDictionary<ushort, int>();
        foreach (var character in _used[face])
        {
            characters.TryAdd(face.Font.Glyphs[character], character);
        }

        return characters;
    }

    private void Add(Typeface face, string text)
    {
        if (!_used.TryGetValue(face, out var characters))
        {
            _used.Add(face, characters = []);
        }

        foreach (var character in text.EnumerateRunes())
        {
            characters.Add(character.Value);
        }
    }
}
