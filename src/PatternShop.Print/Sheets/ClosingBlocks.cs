using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>What stands after the rows: cautions, the maker's own notes and licence, and where the version is found.</summary>
internal static class ClosingBlocks
{
    private const double Indent = 5;

    public static IEnumerable<Stacked> Of(Piece piece, VersionLine version, Rhythm rhythm, Wording wording)
    {
        var language = TitleBlock.LanguageOf(piece, wording);
        if (piece.Document.Notes.Trim().Length > 0)
        {
            yield return new Stacked(rhythm.Section, new Headed(Headings.Section(wording.NotesTitle), 1.5, Paragraphs(piece.Document.Notes, language)));
        }

        if (piece.Document.Videos.Where(video => video.Row is null).Select(wording.VideoText).ToSequence() is { Count: > 0 } videos)
        {
            yield return new Stacked(rhythm.Section, new Headed(Headings.Section(wording.VideosLabel), 1.5, List(videos)));
        }

        yield return new Stacked(rhythm.Section, new Whole(new Headed(Headings.Section(wording.CautionsTitle), 1.5, List(wording.Cautions))));
        if (piece.Document.Licence.Trim().Length > 0)
        {
            yield return new Stacked(rhythm.Section, new Headed(Headings.Section(wording.LicenceLabel), 1.5, Paragraphs(piece.Document.Licence, language)));
        }

        if (version.Address is { } address)
        {
            yield return new Stacked(rhythm.Section, new Whole(new Headed(Headings.Section(wording.FoundTitle), 1.5, AddressBlock.Of(address, wording))));
        }
    }

    private static Stack Paragraphs(string text, string? language) =>
        new(text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(line => new Stacked(1.5, new Words(line, Styles.Body, new Tag(TagKind.Paragraph) { Language = language })))
            .ToSequence());

    private static Stack List(Sequence<string> lines)
    {
        var list = new Tag(TagKind.List);
        return new Stack(lines.Select(line => new Stacked(1, Item(line, list))).ToSequence());
    }

    private static Bulleted Item(string text, Tag list)
    {
        var item = new Tag(TagKind.ListItem, list);
        return new Bulleted(
            Indent,
            new Words("•", Styles.Body, new Tag(TagKind.ListLabel, item)),
            new Words(text, Styles.Body, new Tag(TagKind.ListBody, item)));
    }
}
