namespace PatternShop.Print;

/// <summary>Which characters were written with which font; a file's text is found by them.</summary>
internal sealed class UsedCharacters
{
    private readonly Dictionary<Typeface, SortedSet<int>> _used = [];

    public void Add(Typeface face, string text)
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

    /// <summary>For each glyph of a font, by number, the character that it was written for: the lowest if there are several.</summary>
    public SortedDictionary<ushort, int> CharactersByGlyph(Typeface face)
    {
        var characters = new SortedDictionary<ushort, int>();
        foreach (var character in _used.GetValueOrDefault(face) ?? [])
        {
            characters.TryAdd(face.Font.Glyphs[character], character);
        }

        return characters;
    }
}
