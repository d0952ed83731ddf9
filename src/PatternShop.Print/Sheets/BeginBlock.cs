using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>How to begin, and the chart.</summary>
internal static class BeginBlock
{
    /// <param name="piece">The piece.</param>
    /// <param name="rhythm">How it is set.</param>
    /// <param name="wording">The words.</param>
    /// <param name="chart">The chart; null where only the rest is measured.</param>
    public static Headed Of(Piece piece, Rhythm rhythm, Wording wording, ChartSheets? chart) =>
        new(Headings.Section(wording.ChartTitle, rhythm), 0.5, new Headed(Words(piece, rhythm, wording), 2, chart is null ? new Picture(0, 0, []) : chart));

    private static Stack Words(Piece piece, Rhythm rhythm, Wording wording)
    {
        var more = new[] { wording.OtherWeftsText(piece), wording.OffsetText(piece), wording.EdgesText(piece), wording.ChartAndRowsText };
        return new Stack(
        [
            new Stacked(0, new Words(wording.BeginText(piece), rhythm.Styles.Begin, new Tag(TagKind.Paragraph))),
            new Stacked(0.4, new Words(string.Join(' ', more.Where(text => text.Length > 0)), rhythm.Styles.Body, new Tag(TagKind.Paragraph))),
        ]);
    }
}
