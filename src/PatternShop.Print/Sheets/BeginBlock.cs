using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>How to begin, and the chart.</summary>
internal static class BeginBlock
{
    /// <param name="piece">The piece.</param>
    /// <param name="rhythm">How it is set.</param>
    /// <param name="wording">The words.</param>
    /// <param name="chart">The chart and what stands beside it; null where only the rest is measured.</param>
    public static Headed Of(Piece piece, Rhythm rhythm, Wording wording, Block? chart)
    {
        var heading = Headings.Section(wording.ChartTitle, rhythm);
        var begin = new Words(wording.BeginText(piece), rhythm.Styles.Begin, new Tag(TagKind.Paragraph));
        var more = new Words(string.Join(' ', More(piece, wording).Where(text => text.Length > 0)), rhythm.Styles.Body, new Tag(TagKind.Paragraph));
        Block rest = chart is null ? new Picture(0, 0, []) : chart;
        return rhythm.SharesLines
            ? new Headed(new Followed(heading, begin), 0.4, new Headed(more, 1.2, rest))
            : new Headed(heading, 0.5, new Headed(new Stack([new Stacked(0, begin), new Stacked(0.4, more)]), 2, rest));
    }

    private static string[] More(Piece piece, Wording wording) =>
        [wording.OtherWeftsText(piece), wording.OffsetText(piece), wording.EdgesText(piece), wording.ChartAndRowsText];
}
