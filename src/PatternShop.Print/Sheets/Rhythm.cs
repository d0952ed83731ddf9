namespace PatternShop.Print;

/// <summary>How much air stands between things, in millimetres.</summary>
/// <param name="Section">Above a section.</param>
/// <param name="Part">Above a part of a section.</param>
/// <param name="Padding">Above and below what stands in a row of a table.</param>
internal sealed record Rhythm(double Section, double Part, double Padding)
{
    public static Rhythm Airy { get; } = new(8, 6, 1.1);

    /// <summary>Where it saves a page.</summary>
    public static Rhythm Close { get; } = new(5, 3.5, 0.5);
}
