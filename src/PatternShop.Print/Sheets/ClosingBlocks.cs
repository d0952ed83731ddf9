using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>What stands after the rows: making up, cautions, corrections so far, the maker's own words and licence, and where the version is found.</summary>
internal static class ClosingBlocks
{
    private const double IndentInEms = 1.3;
    private const double LabelGap = 7;

    public static IEnumerable<Stacked> Of(Piece piece, VersionLine version, Rhythm rhythm, Wording wording)
    {
        var language = TitleBlock.LanguageOf(piece, wording);
        var after = piece.Document.AfterChart;
        if (after.MakingUp)
        {
            // in large print half a page would be left empty
            yield return Section(wording.MakingUpTitle, rhythm, new Stack(
            [
                new Stacked(0, new Words(wording.MakingUpMark, rhythm.Styles.Quiet, new Tag(TagKind.Paragraph))),
                new Stacked(rhythm.Part, Named(wording.MakingUp(piece).Select(part => (part.Name, part.Text)).ToSequence(), rhythm)),
            ]), mayFlow: rhythm.Styles == Styles.Large);
        }

        yield return Section(wording.CautionsTitle, rhythm, List([.. wording.Cautions.Select(caution => (Text: caution, Target: (string?)null))], rhythm));
        if (after.Corrections && version.Corrections.Count > 0)
        {
            yield return Section(wording.CorrectionsTitle, rhythm, new Stack(
            [
                new Stacked(0, new Words(wording.CorrectionsMark, rhythm.Styles.Quiet, new Tag(TagKind.Paragraph))),
                new Stacked(rhythm.Part, Named(version.Corrections.Select(correction => (wording.VersionText(correction.Number, correction.Date), correction.What)).ToSequence(), rhythm)),
            ]));
        }

        if (after.Notes && piece.Document.Notes.Trim().Length > 0)
        {
            yield return new Stacked(rhythm.Section, new Headed(Headings.Section(wording.NotesTitle, rhythm), 1.5, Paragraphs(piece.Document.Notes, language, rhythm)));
        }

        if (piece.Document.Videos.Where(video => video.Row is null).Select(video => (Text: wording.VideoText(video), Target: (string?)video.Address)).ToSequence() is { Count: > 0 } videos)
        {
            yield return new Stacked(rhythm.Section, new Headed(Headings.Section(wording.VideosLabel, rhythm), 1.5, List(videos, rhythm)));
        }

        if (piece.Document.Licence.Trim().Length > 0)
        {
            yield return new Stacked(rhythm.Section, new Headed(Headings.Section(wording.LicenceLabel, rhythm), 1.5, Paragraphs(piece.Document.Licence, language, rhythm)));
        }

        if (version.Address is { } address)
        {
            yield return Section(wording.FoundTitle, rhythm, AddressBlock.Of(address, rhythm, wording));
        }
    }

    // Not split where it fits a page.
    private static Stacked Section(string title, Rhythm rhythm, Block body, bool mayFlow = false)
    {
        var section = new Headed(Headings.Section(title, rhythm), 1.5, body);
        return new Stacked(rhythm.Section, mayFlow ? section : new Whole(section));
    }

    private static Table Named(Sequence<(string Name, string Text)> lines, Rhythm rhythm)
    {
        var table = new Tag(TagKind.Table);
        var names = lines.Max(line => Lettering.Width(line.Name, rhythm.Styles.Strong)) + LabelGap;
        return new Table([names], null, null, lines.Select(line => Row(line, table, rhythm)).ToSequence(), rhythm.Padding);
    }

    private static TableRow Row((string Name, string Text) line, Tag table, Rhythm rhythm)
    {
        var row = new Tag(TagKind.TableRow, table);
        return new TableRow(row,
        [
            new Words(line.Name, rhythm.Styles.Strong, new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
            new Words(line.Text, rhythm.Styles.Body, new Tag(TagKind.Cell, row)),
        ]);
    }

    private static Stack Paragraphs(string text, string? language, Rhythm rhythm) =>
        new(text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(line => new Stacked(1.5, new Words(line, rhythm.Styles.Body, new Tag(TagKind.Paragraph) { Language = language })))
            .ToSequence());

    private static Stack List(Sequence<(string Text, string? Target)> lines, Rhythm rhythm)
    {
        var list = new Tag(TagKind.List);
        return new Stack(lines.Select(line => new Stacked(1, Item(line, list, rhythm))).ToSequence());
    }

    private static Bulleted Item((string Text, string? Target) line, Tag list, Rhythm rhythm)
    {
        var item = new Tag(TagKind.ListItem, list);
        var body = new Tag(TagKind.ListBody, item);
        return new Bulleted(
            IndentInEms * rhythm.Styles.Body.Em,
            new Words("•", rhythm.Styles.Body, new Tag(TagKind.ListLabel, item)),
            new Words(line.Text, rhythm.Styles.Body, line.Target is null ? body : new Tag(TagKind.Link, body) { Target = line.Target }));
    }
}
