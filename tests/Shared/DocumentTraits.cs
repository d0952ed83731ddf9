using PatternShop.Weave;

namespace PatternShop.Tests.Shared;

/// <summary>What kind of case a document is, so that tests can show that no kind is missing.</summary>
public static class DocumentTraits
{
    /// <summary>The kinds that every law about whole pieces should meet in at least 5 % of its cases.</summary>
    public static IReadOnlyDictionary<string, Func<PatternDocument, bool>> All { get; } = new Dictionary<string, Func<PatternDocument, bool>>(StringComparer.Ordinal)
    {
        ["asymmetric"] = IsAsymmetric,
        ["odd repeat"] = HasOddRepeat,
        ["right start"] = d => d.Rows.Wefts[0].Start == Side.Right,
        ["entering"] = d => d.Width.Floating?.Edges == EdgeWay.Entering,
        ["alike"] = d => d.Width.Floating?.Edges == EdgeWay.Alike,
        ["no floating"] = d => d.Width.Floating is null,
        ["offset"] = d => d.Width.Offset != 0,
        ["balance"] = d => d.Width.Balance != 0,
        ["plain rows"] = d => Simple(d).Any(step => step is PlainRows),
        ["two wefts"] = d => Simple(d).Select(WeftOf).Distinct().Count() > 1,
        ["stitch with its own yarn"] = d => Simple(d).Any(step => step is EdgeStitch { Yarn: StitchYarn.Own }),
        ["stitch with the working weft"] = d => Simple(d).Any(step => step is EdgeStitch { Yarn: StitchYarn.Working }),
        ["words for rows"] = d => d.RowWords.Count > 0,
        ["video"] = d => d.Videos.Count > 0,
        ["photo of a row"] = d => d.Photos.Any(photo => photo.Row is not null),
        ["limit in threads"] = d => d.Limits?.Threads is not null,
        ["limit in length"] = d => d.Limits?.Length is not null,
        ["thickness"] = d => d.Cloth.Warp.Thickness is not null,
        ["order of ends"] = d => d.Cloth.Ends.Count > 0,
        ["order of rows"] = d => d.Cloth.Rows.Count > 0,
        ["own colour"] = d => d.Cloth.Own.Count > 0,
        ["something left out after the chart"] = d => d.AfterChart != AfterChart.All,
        ["no colours"] = d => d.Cloth == ClothLook.Plain,
        ["downwards"] = d => Simple(d).Any(step => step is ChartRows rows && rows.First > rows.Last),
    };

    /// <summary>Whether some row of the motif, repeated and balanced, reads otherwise from the right than from the left.</summary>
    public static bool IsAsymmetric(PatternDocument document)
    {
        var (motif, width) = (document.Motif, document.Width);
        var ends = (motif.Columns * width.Repeats) + width.Balance;
        return Enumerable.Range(0, motif.Rows).Any(row => Enumerable.Range(0, ends)
            .Any(end => motif[row, (end + width.Offset) % motif.Columns] != motif[row, (ends - 1 - end + width.Offset) % motif.Columns]));
    }

    /// <summary>Whether an odd number of rows is woven more than once.</summary>
    public static bool HasOddRepeat(PatternDocument document) =>
        document.Rows.Steps.OfType<Repeat>().Any(repeat => repeat.Times > 1 && repeat.Steps.Sum(RowsOf) % 2 != 0);

    private static IEnumerable<SimpleStep> Simple(PatternDocument document) =>
        document.Rows.Steps.SelectMany(step => step is Repeat repeat ? repeat.Steps : (IEnumerable<SimpleStep>)[(SimpleStep)step]);

    private static int RowsOf(SimpleStep step) => step switch
    {
        ChartRows rows => rows.Count,
        PlainRows rows => rows.Count,
        _ => 0,
    };

    private static int WeftOf(SimpleStep step) => step switch
    {
        ChartRows rows => rows.Weft,
        PlainRows rows => rows.Weft,
        EdgeStitch { Yarn: StitchYarn.Working } stitch => stitch.Weft,
        _ => 1,
    };
}
