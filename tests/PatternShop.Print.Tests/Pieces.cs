using PatternShop.Weave;

namespace PatternShop.Print.Tests;

/// <summary>Pieces of many kinds to print.</summary>
internal static class Pieces
{
    public static BitGrid Diamond { get; } = GridText.Read(
        "x..xxx..", "xx..x..x", ".xx...xx", "..xx.xx.", "x..xxx..", "..xx.xx.", ".xx...xx", "xx..x..x");

    public static PatternDocument DiamondDocument { get; } = new(
        "Small diamond",
        "en",
        "",
        "",
        Diamond,
        new WidthPlan(3, 0, 1, new FloatingSelvedges(EdgeWay.Alike, Stroke.Under)),
        new RowPlan([new Weft(Side.Right)], Stroke.Under, [new Repeat(2, [new ChartRows(1, 8, 1)]), new ChartRows(1, 1, 1), new PlainRows(1, 1)]),
        new Gauge(new Density(4, DensityUnit.PerInch), new Density(4, DensityUnit.PerInch)),
        GlyphStyle.Cells);

    /// <summary>Odd repeated rows, alike edges: every other time through reads differently.</summary>
    public static PatternDocument Odd { get; } = DiamondDocument with
    {
        Title = "Three row twill",
        Motif = GridText.Read("xx.", ".xx", "x.x"),
        Width = new WidthPlan(3, 0, 0, new FloatingSelvedges(EdgeWay.Alike, Stroke.Under)),
        Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new Repeat(5, [new ChartRows(1, 3, 1)])]),
        Glyphs = GlyphStyle.Bars,
    };

    /// <summary>Two wefts, plain rows, edge stitches, entering edges, words of the maker's own.</summary>
    public static PatternDocument Rich { get; } = DiamondDocument with
    {
        Title = "Ένα μικρό σχέδιο — с каймой",
        Language = "el",
        Notes = "Beat gently. 🧶 Leave long tails.\nA second thought.",
        Licence = "Weave it, sell what you weave, do not sell the chart.",
        Motif = GridText.Read("xxx..", ".x.xx"),
        Width = new WidthPlan(4, 4, 0, new FloatingSelvedges(EdgeWay.Entering, Stroke.Over)),
        Rows = new RowPlan(
            [new Weft(Side.Right), new Weft(Side.Left)],
            Stroke.Under,
            [
                new PlainRows(2, 1),
                new EdgeStitch("twining", StitchYarn.Own, 1, Side.Left, 1),
                new Repeat(12, [new ChartRows(1, 1, 1), new PlainRows(1, 2), new ChartRows(2, 2, 1), new PlainRows(1, 2)]),
                new EdgeStitch("twining", StitchYarn.Working, 2, Side.Left, 1),
                new ChartRows(2, 1, 1),
                new PlainRows(2, 1),
            ]),
    };

    /// <summary>Many ends and rows, each row different: the chart goes over several sheets.</summary>
    public static PatternDocument Large { get; } = DiamondDocument with
    {
        Title = "Large",
        Motif = BitGrid.Create(64, 90, (row, end) => ((row * 7) + (end * 3) + (row * end / 5)) % 7 < 3),
        Width = new WidthPlan(1, 0, 0, null),
        Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, 64, 1)]),
    };

    public static IReadOnlyDictionary<string, PatternDocument> All { get; } = new Dictionary<string, PatternDocument>(StringComparer.Ordinal)
    {
        ["diamond"] = DiamondDocument,
        ["odd"] = Odd,
        ["rich"] = Rich,
        ["large"] = Large,
    };
}
