using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>The printable of a piece: what a maker gives or sells.</summary>
public static class Printable
{
    private static readonly Margins Margins = new(15, 15, 15, 18);
    private const double FooterHeight = 10;

    private const double QrModule = 0.5;
    private const double QrGap = 3;
    private const double QrBelow = 5;
    private const double QrAbove = 2;
    private const double CopyLine = 4.5;

    // With more pages than this nobody minds one more.
    private const int WorthSaving = 4;

    /// <summary>The printable as a PDF file. The same piece, version line, paper and words give the same bytes.</summary>
    public static byte[] Make(Piece piece, VersionLine version, Paper paper, Wording wording) =>
        Painter.Paint(Plan(piece, version, paper, wording));

    /// <summary>The pages of the printable, before they are painted.</summary>
    internal static PrintPlan Plan(Piece piece, VersionLine version, Paper paper, Wording wording)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(version);
        ArgumentNullException.ThrowIfNull(paper);
        ArgumentNullException.ThrowIfNull(wording);
        var document = piece.Document;
        var airy = Pages(piece, version, paper, Rhythm.Airy, wording);
        var close = airy.Count is > 1 and <= WorthSaving ? Pages(piece, version, paper, Rhythm.Close, wording) : airy;
        var pages = close.Count < airy.Count ? close : airy;
        return new PrintPlan(paper, new FileFacts(document.Title, wording.Language, version.Text(wording), document.Licence, wording.PrintSubject), pages);
    }

    private static Sequence<PagePlan> Pages(Piece piece, VersionLine version, Paper paper, Rhythm rhythm, Wording wording) => PagePlanner.Plan(
        paper,
        version.Copy?.Address is { } address ? Margins with { Bottom = Math.Max(Margins.Bottom, QrSide(address) + QrBelow + QrAbove) } : Margins,
        Body(piece, version, rhythm, wording),
        (page, of) => Footer(piece, version, paper, wording.PageText(page, of), wording));

    private static Stack Body(Piece piece, VersionLine version, Rhythm rhythm, Wording wording) => new(
    [
        .. TitleBlock.Of(piece, version, rhythm, wording),
        new Stacked(rhythm.Section, new Headed(
            Headings.Section(wording.ChartTitle),
            1.5,
            new Headed(new Words(wording.ChartGoesUp, Styles.Body, new Tag(TagKind.Paragraph)), 3, new ChartSheets(piece, wording)))),
        new Stacked(rhythm.Section, new Whole(new Headed(Headings.Section(wording.ScheduleTitle), 1.5, ScheduleBlock.Of(piece, rhythm, wording)))),
        new Stacked(rhythm.Section, new Headed(Headings.Section(wording.RowsTitle), 2, new Stack(RowsBlock.Of(piece, rhythm, wording).ToSequence()))),
        .. ClosingBlocks.Of(piece, version, rhythm, wording),
    ]);

    // The code stands at the right of the foot; title, version and page stand beside it.
    private static IEnumerable<Placed> Footer(Piece piece, VersionLine version, Paper paper, string page, Wording wording)
    {
        var y = paper.Height - FooterHeight;
        var width = paper.Width - Margins.Left - Margins.Right - (version.Copy?.Address is { } address ? QrSide(address) + QrGap : 0);
        var right = Lettering.Width(page, Styles.Footer);
        var left = Lettering.Lines($"{piece.Document.Title} · {version.Text(wording)}", Styles.Footer, width - right - 5)[0];
        return
        [
            new Placed(new StrokeMark(Margins.Left, y - 5, [[new Spot(0, 0), new Spot(width, 0)]], false, 0.12, 0.55), null),
            .. TextLine.Set(left, Margins.Left, y, Styles.Footer, null),
            .. TextLine.Set(page, Margins.Left + width - right, y, Styles.Footer, null),
            .. version.Copy is { } copy ? CopyMarks(copy, width, paper, wording) : [],
        ];
    }

    private static IEnumerable<Placed> CopyMarks(Copy copy, double width, Paper paper, Wording wording)
    {
        var line = Lettering.Lines(wording.CopyText(copy.Code, copy.Address), Styles.Footer, width)[0];
        var marks = TextLine.Set(line, Margins.Left, paper.Height - FooterHeight + CopyLine, Styles.Footer, null);
        return copy.Address is not { } address
            ? marks
            : marks.Concat(ShapeMarks.Of(QrPicture.Of(address, QrModule)).Select(mark =>
                new Placed(mark, null).Moved(paper.Width - Margins.Right - QrSide(address), paper.Height - QrBelow - QrSide(address))));
    }

    private static double QrSide(string address) => QrPicture.Modules(address) * QrModule;
}
