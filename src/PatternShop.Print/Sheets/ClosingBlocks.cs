using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>What stands after the rows: cautions, the maker's own notes and licence, and where the version is found.</summary>
internal static class ClosingBlocks
{
    private const double IndentInEms = 1.3;

    public static IEnumerable<Stacked> Of(Piece piece, VersionLine version, Rhythm rhythm, Wording wording)
    {
        var language = TitleBlock.LanguageOf(piece, wording);
        if (piece.Document.Notes.Trim().Length > 0)
        {
            yield return new Stacked(rhythm.Section, new Headed(Headings.Section(wording.NotesTitle, rhythm), 1.5, Paragraphs(piece.Document.Notes, language, rhythm)));
        }

        if (piece.Document.Videos.Where(video => video.Row is null).Select(video => (Text: wording.VideoText(video), Target: (string?)video.Address)).ToSequence() is { Count: > 0 } videos)
        {
            yield return new Stacked(rhythm.Section, new Headed(Headings.Section(wording.VideosLabel, rhythm), 1.5, List(videos, rhythm)));
        }

        yield return new Stacked(rhythm.Section, new Whole(new Headed(Headings.Section(wording.CautionsTitle, rhythm), 1.5, List([.. wording.Cautions.Select(caution => (Text: caution, Target: (string?)null))], rhythm))));
        if (piece.Document.Licence.Trim().Length > 0)
        {
            yield return new Stacked(rhythm.Section, new Headed(Headings.Section(wording.LicenceLabel, rhythm), 1.5, Paragraphs(piece.Document.Licence, language, rhythm)));
        }

        if (version.Address is { } address)
        {
            yield return new Stacked(rhythm.Section, new Whole(new Headed(Headings.Section(wording.FoundTitle, rhythm), 1.5, AddressBlock.Of(address, rhythm, wording))));
        }
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
