using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>
/// What changed from one version to a later one, for those who hold the earlier one on paper: the old and the new reading of each row,
/// the new one as a strip that is set like the printed row, to be cut out and pasted over it.
/// </summary>
public static class CorrectionSlip
{
    private const double Between = 6;
    private const double Rounding = 0.01;
    private const double PointStep = 0.5;

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
                .. Strips(old, @new, change, set, wording),
            ]))));
        }
    }

    // A row that stands on the sheet several times, and was set otherwise there, has a strip for its lowest place.
    private static IEnumerable<Stacked> Strips(Piece old, Piece @new, ChangedRows change, (double Width, Rhythm Rhythm) set, Wording wording)
    {
        foreach (var places in change.New.Index().GroupBy(row => @new.PrintedFor(row.Item), row => row.Index))
        {
            var width = set.Rhythm.RowsWidth(set.Width);
            double? covered = change.Old.Count == 0
                ? null
                : places.Select(at => old.PrintedFor(change.Old[at])).Distinct().Min(number => HeightOf(RowsBlock.OneRow(old, number, set.Rhythm, wording), width));
            var (row, way) = Fitting(number => RowsBlock.OneRow(@new, places.Key, number, wording), set.Rhythm, covered, width);
            if (way.InShort && !set.Rhythm.InShort)
            {
                yield return new Stacked(1, new Words($"{wording.SlipInShort} {wording.ShortLegend}.", set.Rhythm.Styles.Body, new Tag(TagKind.Paragraph)));
            }

            var isLonger = covered is { } room && HeightOf(row, width) > room + Rounding;
            if (isLonger)
            {
                yield return new Stacked(1, new Words(wording.SlipLonger, set.Rhythm.Styles.Body, new Tag(TagKind.Paragraph)));
            }

            yield return new Stacked(2, new Framed(width, row, covered ?? 0, isLonger ? covered : null));
        }
    }

    // Set as on the sheet where it is no higher than what it covers, else smaller down to the smallest size of written rows, else in the short form.
    private static (Table Row, Rhythm Way) Fitting(Func<Rhythm, Table> rowIn, Rhythm usual, double? covered, double width)
    {
        var (row, way) = (rowIn(usual), usual);
        foreach (var closer in covered is null ? [] : Closer(usual))
        {
            if (HeightOf(row, width) <= covered + Rounding)
            {
                break;
            }

            (row, way) = (rowIn(closer), closer);
        }

        return (row, way);
    }

    private static IEnumerable<Rhythm> Closer(Rhythm usual)
    {
        for (var points = usual.Styles.Directions.Points; points >= Styles.Floor; points -= PointStep)
        {
            yield return With(points, usual.InShort);
        }

        if (usual.Styles.Directions.Points % PointStep != 0)
        {
            yield return With(Styles.Floor, usual.InShort);
        }

        if (!usual.InShort)
        {
            yield return With(Styles.Floor, true);
        }

        Rhythm With(double points, bool isShort) => usual with
        {
            InShort = isShort,
            Padding = Math.Min(usual.Padding, Rhythm.ShortPadding),
            Styles = usual.Styles with
            {
                Directions = usual.Styles.Directions with { Points = points, Leading = Rhythm.ShortLeading },
                RowNumber = usual.Styles.RowNumber with { Points = points, Leading = Rhythm.ShortLeading },
            },
        };
    }

    private static double HeightOf(Table row, double width) => row.Fit(width, double.PositiveInfinity, true).Height;

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
