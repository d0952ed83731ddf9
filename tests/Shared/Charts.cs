using System.Globalization;
using System.Text.RegularExpressions;
using PatternShop.Weave;

namespace PatternShop.Tests.Shared;

/// <summary>Short ways to write documents and directions in tests.</summary>
public static partial class Charts
{
    /// <summary>Alike floating selvedges, first under.</summary>
    public static FloatingSelvedges AlikeUnder { get; } = new(EdgeWay.Alike, Stroke.Under);

    /// <summary>Alike floating selvedges, first over.</summary>
    public static FloatingSelvedges AlikeOver { get; } = new(EdgeWay.Alike, Stroke.Over);

    /// <summary>Entering floating selvedges, first under.</summary>
    public static FloatingSelvedges EnteringUnder { get; } = new(EdgeWay.Entering, Stroke.Under);

    /// <summary>Entering floating selvedges, first over.</summary>
    public static FloatingSelvedges EnteringOver { get; } = new(EdgeWay.Entering, Stroke.Over);

    /// <summary>The ten-end diamond: six-shaft twill (over 1, under 1, over 2, under 2) drawn on ends 1 2 3 4 5 6 5 4 3 2 and woven in the same order of rows.</summary>
    public const string TenEndDiamond = "x.xx...xx./.x.xx.xx.x/..x.xxx.x./x..x.x.x../xx..x.x..x/.xx..x..xx/xx..x.x..x/x..x.x.x../..x.xxx.x./.x.xx.xx.x";

    /// <summary>A document whose chart is written with 'x' over and '.' under, rows parted by '/', row 1 first; without steps its rows are woven once.</summary>
    public static PatternDocument Document(
        string chart,
        int repeats = 1,
        int offset = 0,
        int balance = 0,
        FloatingSelvedges? floating = null,
        Side start = Side.Left,
        params RowStep[] steps)
    {
        var motif = GridText.Read(chart.Replace(" ", "", StringComparison.Ordinal).Split('/'));
        return new PatternDocument(
            "Test cloth",
            "en",
            "",
            "",
            motif,
            new WidthPlan(repeats, offset, balance, floating),
            new RowPlan([new Weft(start)], Stroke.Under, steps.Length > 0 ? steps.ToSequence() : [new ChartRows(1, motif.Rows, 1)]),
            new Gauge(new Density(4, DensityUnit.PerInch), new Density(5, DensityUnit.PerInch)),
            GlyphStyle.Cells);
    }

    /// <summary>
    /// "Whole pieces" 1 of the project's list of outside values: the ten-end diamond on 23 ends (two motifs, one balance end, two floating
    /// selvedges) and 22 rows (rows 1-10 twice, row 1, one plain row); 5 ends and 4 rows per inch.
    /// </summary>
    public static PatternDocument DiamondPiece { get; } =
        Document(TenEndDiamond, 2, 0, 1, AlikeOver, Side.Left, new Repeat(2, [new ChartRows(1, 10, 1)]), new ChartRows(1, 1, 1), new PlainRows(1, 1)) with
        {
            Gauge = new Gauge(new Density(5, DensityUnit.PerInch), new Density(4, DensityUnit.PerInch)),
        };

    /// <summary>Runs in short: "u1o2u1".</summary>
    public static string Short(IEnumerable<Run> runs) => string.Concat(runs.Select(Short));

    /// <summary>A writing in short: "o2[u1o1]×4".</summary>
    public static string Short(Writing writing) => Short(writing.Items);

    private static string Short(Sequence<WritingItem> items) => string.Concat(items.Select(item => item switch
    {
        BracketItem bracket => string.Create(CultureInfo.InvariantCulture, $"[{Short(bracket.Items)}]×{bracket.Times}"),
        RunItem run => Short(run.Run),
        _ => throw new InvalidOperationException(item.GetType().Name),
    }));

    /// <summary>Directions written by hand, with spaces and brackets, in the short form without either.</summary>
    public static string Plainly(string directions)
    {
        while (Bracket().IsMatch(directions))
        {
            directions = Bracket().Replace(
                directions,
                match => string.Concat(Enumerable.Repeat(match.Groups["runs"].Value, int.Parse(match.Groups["times"].ValueSpan, CultureInfo.InvariantCulture))));
        }

        return directions.Replace(" ", "", StringComparison.Ordinal);
    }

    private static string Short(Run run) => string.Create(CultureInfo.InvariantCulture, $"{(run.Stroke == Stroke.Over ? 'o' : 'u')}{run.Count}");

    [GeneratedRegex(@"\[(?<runs>[^\[\]]*)\]×(?<times>\d+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bracket();
}
