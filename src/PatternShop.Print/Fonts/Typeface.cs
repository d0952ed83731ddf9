namespace PatternShop.Print;

/// <summary>
/// A font that pages are set in. Text wider than the house font's characters falls back to one that knows Greek, Cyrillic
/// and more Latin, in one weight only.
/// </summary>
internal sealed class Typeface
{
    private const double MillimetresPerPoint = 25.4 / 72;

    private Typeface(string name, string libraryName)
    {
        Name = name;
        LibraryName = libraryName;
        using var stream = typeof(Typeface).Assembly.GetManifestResourceStream(name + ".ttf")
            ?? throw new InvalidOperationException($"The font {name} is not embedded.");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        File = copy.ToArray();
        Font = TrueTypeFont.Read(File);
    }

    public static Typeface Regular { get; } = new("AtkinsonHyperlegibleNext-Regular", "Atkinson Hyperlegible Next Regular");

    public static Typeface Bold { get; } = new("AtkinsonHyperlegibleNext-Bold", "Atkinson Hyperlegible Next,Bold");

    public static Typeface Wide { get; } = new("NotoSans-Regular", "Noto Sans Regular");

    public static IReadOnlyList<Typeface> All { get; } = [Regular, Bold, Wide];

    /// <summary>The font's PostScript name, which is also that of its file.</summary>
    public string Name { get; }

    /// <summary>What the PDF library calls the font in what it writes.</summary>
    public string LibraryName { get; }

    public byte[] File { get; }

    public TrueTypeFont Font { get; }

    public bool Has(ReadOnlySpan<char> text)
    {
        foreach (var character in text.EnumerateRunes())
        {
            if (!Font.Has(character))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Width of a text in millimetres at a size in points; without kerning, as it is painted.</summary>
    public double Width(ReadOnlySpan<char> text, double points)
    {
        var units = 0L;
        foreach (var character in text.EnumerateRunes())
        {
            units += Font.Advance(character);
        }

        return units * points * MillimetresPerPoint / Font.UnitsPerEm;
    }

    public override string ToString() => Name;
}
