namespace PatternShop.Weave;

/// <summary>How much ink cells take.</summary>
public enum Ink
{
    /// <summary>Over cells are dark.</summary>
    Full,

    /// <summary>Over cells are light between two dark edges.</summary>
    Sparing,
}

/// <summary>How a chart is lettered and inked. Sizes are ems in millimetres.</summary>
/// <param name="Ink">How much ink cells take.</param>
/// <param name="Text">Size of the words at brackets; the legend goes with it.</param>
/// <param name="NumberPart">Size of row numbers as a part of a cell.</param>
/// <param name="LeastNumber">Row numbers are never smaller.</param>
/// <param name="MostNumber">Row numbers are never larger.</param>
/// <param name="LeastEndNumber">Numbers of ends are never smaller; where they would touch, every fifth end has one.</param>
/// <param name="NarrowBrackets">Whether words at brackets are broken into lines where the rows leave room for them.</param>
public sealed record ChartLook(Ink Ink, double Text, double NumberPart, double LeastNumber, double MostNumber, double LeastEndNumber, bool NarrowBrackets)
{
    /// <summary>As on screens.</summary>
    public static ChartLook Usual { get; } = new(Ink.Full, 2.9, 0.46, 1.7, 3.4, 1.9, false);

    /// <summary>
    /// How much of a line of the legend there is for each end that is shown, in millimetres: its parts stand beside each other as far as that
    /// reaches. 0: under each other. No more than the least cell, so that the legend never makes a chart wider.
    /// </summary>
    public double LegendPerEnd { get; init; }

    /// <summary>Whether brackets stand without words.</summary>
    public bool BareBrackets { get; init; }

    /// <summary>Whether the legend says it in a few words.</summary>
    public bool ShortLegend { get; init; }
}
