namespace PatternShop.Print;

/// <summary>How words are set.</summary>
/// <param name="Points">Size.</param>
/// <param name="Bold">Weight.</param>
/// <param name="Grey">0 is black, 1 white.</param>
/// <param name="Leading">Height of a line as a multiple of the size.</param>
internal sealed record TextStyle(double Points, bool Bold = false, double Grey = 0, double Leading = 1.35)
{
    private const double MillimetresPerPoint = 25.4 / 72;

    /// <summary>The size in millimetres.</summary>
    public double Em => Points * MillimetresPerPoint;

    public double LineHeight => Em * Leading;

    /// <summary>From the top of a line to its baseline: capitals, about 0.7 em high, stand in the middle.</summary>
    public double Baseline => (LineHeight / 2) + (0.35 * Em);
}
