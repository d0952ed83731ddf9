using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>
/// A cover to cut out and lay on the printed chart: its window shows the row that is woven and the two below it, and hides the
/// rows above. Made to the cells of the printable and of the large print on the same paper.
/// </summary>
public static class RowCover
{
    private const int RowsInSight = 3;
    private const double Rim = 8;
    private const double Above = 42;
    private const double Below = 14;
    private const double MillimetresPerTextUnit = 25.4 / 72;

    /// <summary>The cover as a PDF file. The same input gives the same bytes.</summary>
    public static byte[] Make(Piece piece, VersionLine version, Paper paper, Wording wording) => Painter.Paint(Plan(piece, version, paper, wording));

    internal static PrintPlan Plan(Piece piece, VersionLine version, Paper paper, Wording wording)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(version);
        ArgumentNullException.ThrowIfNull(wording);
        var frame = new SheetFrame(piece, version, paper, wording, PrintSetting.Standard);
        var styles = Styles.Standard;
        var title = new Tag(TagKind.Heading1) { Bookmark = $"{wording.RowCoverTitle}: {piece.Document.Title}", Language = TitleBlock.LanguageOf(piece, wording) };
        var body = new Stack(
        [
            new Stacked(0, new Words($"{wording.RowCoverTitle}: {piece.Document.Title}", styles.Heading, title)),
            new Stacked(0.5, new Words(version.FullText(wording), styles.Quiet, new Tag(TagKind.Paragraph))),
            .. wording.RowCoverSteps.Select(step => new Stacked(1.5, new Words(step, styles.Body, new Tag(TagKind.Paragraph)))),
            Cover(frame, PrintSetting.Standard),
            Cover(frame, PrintSetting.LargePrint),
        ]);
        var facts = new FileFacts($"{wording.RowCoverTitle}: {piece.Document.Title}", wording.Language, version.Text(wording), piece.Document.Licence, wording.RowCoverSubject);
        return new PrintPlan(paper, facts, frame.Pages(body));
    }

    private static Stacked Cover(SheetFrame frame, PrintSetting setting)
    {
        var wording = frame.Wording;
        var charts = Printable.Plan(frame.Piece, frame.Version, frame.Paper, wording, setting).Pages
            .SelectMany(page => page.Items).Select(item => item.Tag?.Chart).OfType<ChartLayout>().Distinct().ToList();
        var (cell, grid) = (charts[0].Cell, charts.Max(chart => chart.GridWidth + (2 * chart.Side)));
        var width = Math.Min(grid + 2, frame.Room.Width - (2 * Rim));
        var height = RowsInSight * cell;
        var figure = new Tag(TagKind.Figure) { Alternative = wording.RowCoverDescription(Tenths(width), Tenths(height)) };
        var outer = (Width: width + (2 * Rim), Height: Above + height + Below);
        var style = new TextStyle(11);
        Placed Text(string text, double y) => new(TextLine.Set(text, (outer.Width - Lettering.Width(text, style)) / 2, y, style, figure).First().Mark, figure);
        var picture = new Picture(outer.Width, outer.Height,
        [
            new Placed(new StrokeMark(0, 0, [Rectangle(0, 0, outer.Width, outer.Height)], true, 0.4, 0), figure),
            new Placed(new StrokeMark(0, 0, Dashed(Rim, Above, width, height), false, 0.4, 0), figure),
            Text(wording.RowCoverAbove, Above / 2),
            Text(wording.RowCoverTop, Above - 3),
            Text(wording.RowCoverBelow, Above + height + 3 + (11 * MillimetresPerTextUnit)),
        ]);
        return new Stacked(7, new Headed(Headings.Section(wording.RowCoverHeading(setting == PrintSetting.LargePrint), Rhythm.Flowing(PrintSetting.Standard)[0]), 2, picture));
    }

    private static decimal Tenths(double millimetres) => decimal.Round((decimal)millimetres, 1);

    private static Sequence<Spot> Rectangle(double x, double y, double width, double height) =>
        [new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height)];

    private static Sequence<Sequence<Spot>> Dashed(double x, double y, double width, double height) =>
    [
        .. SheetMarks.DashesOf(new Spot(x, y), new Spot(x + width, y)),
        .. SheetMarks.DashesOf(new Spot(x, y + height), new Spot(x + width, y + height)),
        .. SheetMarks.DashesOf(new Spot(x, y), new Spot(x, y + height)),
        .. SheetMarks.DashesOf(new Spot(x + width, y), new Spot(x + width, y + height)),
    ];
}
