namespace PatternShop.Print;

/// <summary>A size of paper, upright, in millimetres.</summary>
/// <param name="Name">As printed and as part of file names, such as "A4".</param>
/// <param name="Width">In millimetres.</param>
/// <param name="Height">In millimetres.</param>
public sealed record Paper(string Name, double Width, double Height)
{
    private const double MillimetresPerInch = 25.4;

    /// <summary>210 × 297 mm (ISO 216).</summary>
    public static Paper A4 { get; } = new("A4", 210, 297);

    /// <summary>8½ × 11 in.</summary>
    public static Paper Letter { get; } = new("Letter", 8.5 * MillimetresPerInch, 11 * MillimetresPerInch);
}
