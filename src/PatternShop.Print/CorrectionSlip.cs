using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>
/// What changed from one version to a later one, for those who hold the earlier one on paper: the old and the new reading of each row,
/// the new one as a strip that is set like the printed row, to be cut out and pasted over it.
/// </summary>
public static class CorrectionSlip
{
    private const double Between = 6;

    /// <summary>The slip as a PDF file. The same two pieces, version lines, paper and words give the same bytes.</summary>
    public static byte[] Make(Piece old, Piece @new, (VersionLine Old, VersionLine New) versions, Paper paper, Wording wording) =>
        Painter.Paint(Plan(old, @new, versions, paper, wording));

    internal static PrintPlan Plan(Piece old, Piece @new, (VersionLine Old, VersionLine New) versions, Paper paper, Wording wording)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(@new);
        ArgumentNullException.ThrowIfNull(wording);
        var frame = new SheetFrame(@new, versions.New, paper, wording, PrintSetting.Standard);
        // strips are set as the rows of the old sheets are
        var rhythm = Printable.Set(new SheetFrame(old, versions.Old, paper, wording, PrintSetting.Standard)).Rhythm;
        var title = wording.SlipTitle(@new.Document.Title);
        var body = new Stack(
        [
            new Stacked(0, new Words(title, rhythm.Styles.Heading, new Tag(TagKind.Heading1) { Bookmark = title, Language = TitleBlock.LanguageOf(@new, wording) })),
            new Stacked(0.5, new Words(wording.SlipVersions(versions.Old.Text(wording), versions.New.Text(wording)), rhythm.Styles.Quiet, new Tag(TagKind.Paragraph))),
            new Stacked(2, new Words(wording.SlipUse, rhythm.Styles.Body, new Tag(TagKind.Paragraph))),
            .. Rows(old, @new, (frame.Room.Width, rhythm), wording),
            .. Facts(old, @new, rhythm, wording),
        ]);
        return new PrintPlan(paper, new FileFacts(title, wording.Language, versions.New.Text(wording), @new.Document.Licence, wording.SlipSubject), frame.Pages(body));
    }

    private static IEnumerable<Stacked> Rows(Piece old, Piece @new, (double Width, Rhythm Rhythm) set, Wording wording)
    {
        var styles = set.Rhythm.Styles;
        if (PieceDifference.IsTooLong(old, @new))
        {
            yield return new Stacked(Between, new Words(wording.TooLongToCompare, styles.Body, new Tag(TagKind.Paragraph)));
            yield break;
        }

        var difference = PieceDifference.Between(old, @new);
        yield return new Stacked(2, new Words(wording.RowsSummary(difference), styles.Body, new Tag(TagKind.Paragraph)));
        foreach (var change in difference.Changes())
        {
            var before = change.Old.Count == 0 ? "" : $"{wording.BeforeLabel}: {wording.RowText(old, change.Old[0])}";
            var now = change.New.Count == 0 ? wording.SlipGone : $"{wording.NowLabel}:";
            yield return new Stacked(Between, new Whole(new Headed(Headings.Section(wording.ChangedRowsText(change), set.Rhythm), 1, new Stack(
            [
                .. new[] { before, now }.Where(text => text.Length > 0).Select(text => new Stacked(0.5, new Words(text, styles.Body, new Tag(TagKind.Paragraph)))),
                .. change.New.Select(@new.PrintedFor).Distinct().Select(number => new Stacked(2, Strip(@new, number, set, wording))),
            ]))));
        }
    }

    // As wide as the column in which the row stands on the sheet.
    private static Framed Strip(Piece piece, int number, (double Width, Rhythm Rhythm) set, Wording wording) =>
        new(set.Rhythm.RowsWidth(set.Width), RowsBlock.OneRow(piece, number, set.Rhythm, wording));

    private static IEnumerable<Stacked> Facts(Piece old, Piece @new, Rhythm rhythm, Wording wording)
    {
        foreach (var fact in wording.FactChanges(old, @new))
        {
            yield return new Stacked(Between, new Headed(Headings.Section(fact.Label, rhythm), 1, new Stack(
            [
                .. Lines(wording.BeforeLabel, fact.Old, rhythm),
                .. Lines(wording.NowLabel, fact.New, rhythm),
            ])));
        }
    }

    private static IEnumerable<Stacked> Lines(string label, string text, Rhythm rhythm) =>
        $"{label}: {(text.Length == 0 ? "–" : text)}".Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => new Stacked(0.5, new Words(line, rhythm.Styles.Body, new Tag(TagKind.Paragraph))));
}
