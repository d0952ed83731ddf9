using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Title, version line, and the counts that the warp needs.</summary>
internal static class TitleBlock
{
    private const double LabelWidth = 34;

    public static IEnumerable<Stacked> Of(Piece piece, VersionLine version, Rhythm rhythm, Wording wording)
    {
        var title = new Tag(TagKind.Heading1) { Language = LanguageOf(piece, wording) };
        yield return new Stacked(0, new Words(piece.Document.Title, Styles.Title, title));
        yield return new Stacked(1, new Words(version.Text(wording), Styles.Quiet, new Tag(TagKind.Paragraph)));
        yield return new Stacked(rhythm.Part, new Headed(Headings.Section(wording.WarpTitle), 1.5, Counts(piece, rhythm, wording)));
    }

    /// <summary>The language of the maker's own words where it is not that of the sheet's.</summary>
    public static string? LanguageOf(Piece piece, Wording wording) =>
        piece.Document.Language == wording.Language ? null : piece.Document.Language;

    private static Table Counts(Piece piece, Rhythm rhythm, Wording wording)
    {
        var table = new Tag(TagKind.Table);
        (string Label, string Text)[] lines =
        [
            (wording.EndsLabel, wording.WarpArithmetic(piece)),
            (wording.CountingRuleLabel, wording.EndsRule(piece)),
            (wording.WidthLabel, wording.WidthText(piece)),
            (wording.RowsLabel, wording.LengthText(piece)),
            (wording.EdgesLabel, wording.EdgesText(piece)),
            (wording.BeginLabel, string.Join(' ', new[] { wording.OffsetText(piece), wording.StartText(piece) }.Where(text => text.Length > 0))),
        ];
        return new Table([LabelWidth], null, null, lines.Select(line => Row(line.Label, line.Text, table)).ToSequence(), rhythm.Padding);
    }

    private static TableRow Row(string label, string text, Tag table)
    {
        var row = new Tag(TagKind.TableRow, table);
        return new TableRow(row,
        [
            new Words(label, Styles.Strong, new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
            new Words(text, Styles.Body, new Tag(TagKind.Cell, row)),
        ]);
    }
}

/// <summary>Headings of sections.</summary>
internal static class Headings
{
    public static Words Section(string text) => new(text, Styles.Heading, new Tag(TagKind.Heading2));

    public static Words Part(string text) => new(text, Styles.Subheading, new Tag(TagKind.Heading3));
}
