using System.Globalization;
using System.Text;

namespace PatternShop.Weave;

/// <summary>Colours that have a plain name here, with values of our own: matte, as yarn is. Names and values stay as they are: documents hold the names.</summary>
public static class NamedColours
{
    /// <summary>All of them, light before dark, in the order in which they are shown.</summary>
    public static Sequence<OwnColour> All { get; } =
    [
        new("white", new Rgb(0xF7, 0xF4, 0xEC)),
        new("cream", new Rgb(0xEA, 0xDF, 0xC3)),
        new("sand", new Rgb(0xCD, 0xB4, 0x8A)),
        new("yellow", new Rgb(0xE3, 0xBB, 0x3C)),
        new("ochre", new Rgb(0xBB, 0x85, 0x30)),
        new("orange", new Rgb(0xD5, 0x7A, 0x33)),
        new("rust", new Rgb(0xA3, 0x50, 0x2B)),
        new("red", new Rgb(0xB2, 0x3A, 0x35)),
        new("dark red", new Rgb(0x77, 0x26, 0x2C)),
        new("rose", new Rgb(0xCF, 0x88, 0x90)),
        new("lilac", new Rgb(0xA5, 0x8F, 0xB9)),
        new("plum", new Rgb(0x71, 0x3A, 0x5C)),
        new("light blue", new Rgb(0x94, 0xB4, 0xC9)),
        new("blue", new Rgb(0x3D, 0x66, 0x98)),
        new("dark blue", new Rgb(0x22, 0x37, 0x5C)),
        new("teal", new Rgb(0x2C, 0x74, 0x79)),
        new("light green", new Rgb(0xA6, 0xBD, 0x86)),
        new("green", new Rgb(0x4C, 0x7D, 0x4F)),
        new("dark green", new Rgb(0x2A, 0x4D, 0x38)),
        new("moss", new Rgb(0x76, 0x7C, 0x3B)),
        new("brown", new Rgb(0x80, 0x58, 0x3A)),
        new("dark brown", new Rgb(0x49, 0x34, 0x2A)),
        new("light grey", new Rgb(0xC4, 0xC2, 0xBB)),
        new("grey", new Rgb(0x8A, 0x88, 0x82)),
        new("dark grey", new Rgb(0x53, 0x52, 0x4F)),
        new("black", new Rgb(0x27, 0x25, 0x24)),
    ];

    /// <summary>How a name of ours is shown; null for any other.</summary>
    public static Rgb? Find(string name) => All.FirstOrDefault(colour => colour.Name == name)?.Value;

    /// <summary>A name as documents hold it: small letters, single spaces, none at its ends.</summary>
    public static string Written(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return string.Join(' ', typed.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Normalize().ToLowerInvariant();
    }

    /// <summary>Whether a text can be the name of a colour: it could then stand in an order without being taken for anything else.</summary>
    public static bool CanBeName(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.Length is > 0 and <= Bounds.ColourName
            && name.EnumerateRunes().All(Fits)
            && Rune.IsLetter(name.EnumerateRunes().First())
            && name == Written(name);
    }

    private static bool Fits(Rune rune) => Rune.GetUnicodeCategory(rune) is
        UnicodeCategory.LowercaseLetter or UnicodeCategory.OtherLetter or UnicodeCategory.ModifierLetter
        or UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark or UnicodeCategory.DecimalDigitNumber
        || rune.Value is ' ' or '-';
}
