using System.Globalization;

namespace PatternShop.Weave;

/// <summary>How a colour is shown on a screen: three parts from 0 to 255 in sRGB (IEC 61966-2-1).</summary>
public readonly record struct Rgb(byte Red, byte Green, byte Blue)
{
    /// <summary>"#" and six lower-case hexadecimal digits.</summary>
    public string Text => $"#{Red:x2}{Green:x2}{Blue:x2}";

    /// <summary>Reads <see cref="Text"/>, capital digits too; null for anything else.</summary>
    public static Rgb? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 7 && text[0] == '#' && int.TryParse(text.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value)
            ? new Rgb((byte)(value >> 16), (byte)(value >> 8), (byte)value)
            : null;
    }

    /// <summary>The same colour with every part made so much of itself: 0 is black, 1 leaves it.</summary>
    public Rgb Darker(double part) => new(Part(Red, part), Part(Green, part), Part(Blue, part));

    private static byte Part(byte value, double part) => (byte)Math.Round(value * part, MidpointRounding.AwayFromZero);
}
