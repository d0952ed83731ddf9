using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Title, maker and version, a small picture of the cloth, and the counts that the warp needs.</summary>
internal static class TitleBlock
{
    private const double LabelGap = 7;
    private const double ClothGap = 7;

    public static IEnumerable<Stacked> Of(Piece piece, VersionLine version, Rhythm rhythm, Wording wording)
    {
        var styles = rhythm.Styles;
        var title = new Tag(TagKind.Heading1) { Bookmark = piece.Document.Title, Language = LanguageOf(piece, wording) };
        var name = new Words(piece.Document.Title, styles.Title, title);
        var line = new Words(version.FullText(wording), styles.Quiet, new Tag(TagKind.Paragraph));
        var words = new Stack(
        [
            new Stacked(0, rhythm.SharesLines ? new Followed(name, line) : new Stack([new Stacked(0, name), new Stacked(0.5, line)])),
            new Stacked(rhythm.Part, rhythm.SharesLines
                ? new Headed(new Followed(Headings.Section(wording.WarpTitle, rhythm), Rule(piece, rhythm, wording)), 0.5, Counts(piece, rhythm, wording))
                : new Headed(Headings.Section(wording.WarpTitle, rhythm), 1, Counts(piece, rhythm, wording))),
        ]);
        yield return new Stacked(0, rhythm.Cloth is { } room ? new Sided(words, ClothGap, Cloth(piece, room, wording)) : words);
    }

    /// <summary>The language of the maker's own words where it is not that of the sheet's.</summary>
    public static string? LanguageOf(Piece piece, Wording wording) =>
        piece.Document.Language == wording.Language ? null : piece.Document.Language;

    private static Picture Cloth(Piece piece, ClothRoom room, Wording wording)
    {
        var cloth = ClothDrawing.Of(piece, room);
        var figure = new Tag(TagKind.Figure) { Alternative = wording.ClothDescription(piece, ClothDrawing.ShowsAll(piece, room)) };
        return new Picture(cloth.Width, cloth.Height, Items.Later(() => ShapeMarks.Of(cloth).Select(mark => new Placed(mark, figure))));
    }

    private static Words Rule(Piece piece, Rhythm rhythm, Wording wording) =>
        new($"{wording.CountingRuleLabel}: {wording.EndsRule(piece)}", rhythm.Styles.Body, new Tag(TagKind.Paragraph));

    private static Table Counts(Piece piece, Rhythm rhythm, Wording wording)
    {
        var table = new Tag(TagKind.Table);
        (string Label, string Text)[] lines =
        [
            (wording.EndsLabel, wording.WarpArithmetic(piece)),
            .. rhythm.SharesLines ? Array.Empty<(string, string)>() : [(wording.CountingRuleLabel, wording.EndsRule(piece))],
            (wording.WidthLabel, wording.WidthText(piece)),
            (wording.RowsLabel, wording.LengthText(piece)),
        ];
        var labels = lines.Max(line => Lettering.Width(line.Label, rhythm.Styles.Strong)) + LabelGap;
        return new Table([labels], null, null, lines.Select(line => Row(line, rhythm, table)).ToSequence(), rhythm.Padding);
    }

    private static TableRow Row((string Label, string Text) line, Rhythm rhythm, Tag table)
    {
        var row = new Tag(TagKind.TableRow, table);
        return new TableRow(row,
        [
            new Words(line.Label, rhythm.Styles.Strong, new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
            new Words(line.Text, rhythm.Styles.Body, new Tag(TagKind.Cell, row)),
        ]);
    }
}
