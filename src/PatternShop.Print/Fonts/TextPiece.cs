namespace PatternShop.Print;

/// <summary>Neighbouring characters that are painted alike: with one font or, where none has them, as a drawing.</summary>
/// <param name="Text">The characters.</param>
/// <param name="Face">The font, or null when the piece is drawn.</param>
/// <param name="Thickened">Whether the font has no bold of its own and is thickened.</param>
internal sealed record TextPiece(string Text, Typeface? Face, bool Thickened = false)
{
    // The library spreads thickened letters by this part of the size (its character spacing).
    private const double ThickenedSpacing = 0.02;

    /// <summary>Width in millimetres.</summary>
    public double Width(TextStyle style)
    {
        if (Face is null)
        {
            return DrawnCharacter.Width * style.Em;
        }

        var width = Face.Width(Text, style.Points);
        return Thickened ? width + (Text.EnumerateRunes().Count() * ThickenedSpacing * style.Em) : width;
    }
}
