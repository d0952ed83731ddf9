namespace PatternShop.Weave;

/// <summary>
/// Estimates that weavers use before a sample is woven. Common practice, no published source; a woven sample goes before them.
/// </summary>
public static class RuleOfThumb
{
    /// <summary>The least and the most that a row of weft is longer than the width on the loom, as parts of the width.</summary>
    public static (decimal Least, decimal Most) TakeUp { get; } = (0.10m, 0.20m);

    /// <summary>Weft for a number of rows: each takes one width of weft plus the take-up.</summary>
    /// <param name="rows">Rows still to be woven, the one on the needle included.</param>
    /// <param name="width">Width on the loom.</param>
    /// <param name="takeUp">Extra as a part of the width, such as 0.10.</param>
    public static Length Weft(int rows, Length width, decimal takeUp) => width * (rows * (1 + takeUp));

    /// <summary>
    /// How high to lay the weft as an arch before it is beaten so that it is longer than the width by the take-up:
    /// √(3/8 × width × extra), the flat-arc approximation.
    /// </summary>
    public static Length Arch(Length width, decimal takeUp) =>
        width with { Amount = (decimal)Math.Sqrt((double)(0.375m * width.Amount * width.Amount * takeUp)) };

    /// <summary>Plain-weave sett for thread diameters: 1 ÷ (d1 + d2), in ends per unit of the diameters.</summary>
    public static decimal PlainSett(decimal warpDiameter, decimal weftDiameter) => 1 / (warpDiameter + weftDiameter);

    /// <summary>2/2 twill sett for thread diameters: 4 ÷ (4 d1 + 2 d2).</summary>
    public static decimal TwillSett(decimal warpDiameter, decimal weftDiameter) => 4 / ((4 * warpDiameter) + (2 * weftDiameter));
}
