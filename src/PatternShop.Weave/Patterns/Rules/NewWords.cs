namespace PatternShop.Weave;

/// <summary>
/// What must hold of the maker's words that come into a document, besides <see cref="DocumentRules"/>. It is asked of files and of edits only:
/// documents that were stored before it was asked open, print and publish with the words that they have.
/// </summary>
public static class NewWords
{
    /// <summary>Everything that is wrong, in the order of the document. Lines and columns are 0.</summary>
    /// <param name="document">The document.</param>
    /// <param name="before">The document before an edit, whose words may stay; null where all words are new.</param>
    public static Sequence<Problem> Check(PatternDocument document, PatternDocument? before = null)
    {
        ArgumentNullException.ThrowIfNull(document);
        var turned = Texts(document).Where(text => TextCharacters.FirstTurning(text.Value) is not null).ToList();
        if (turned.Count == 0)
        {
            return [];
        }

        var known = before is null ? [] : Texts(before).Select(text => text.Value).ToHashSet(StringComparer.Ordinal);
        return turned.Where(text => !known.Contains(text.Value)).Select(text => Problem(text.Pointer, text.Label, TextCharacters.FirstTurning(text.Value)!)).ToSequence();
    }

    private static Problem Problem(string pointer, string label, UnfitCharacter character) =>
        new(ProblemCodes.TextDirection, pointer, 0, 0, TextRules.Says(label, character), character.Remedy);

    private static IEnumerable<(string Pointer, string Label, string Value)> Texts(PatternDocument document) =>
    [
        ("/title", "The title", document.Title),
        ("/licence", "The licence", document.Licence),
        ("/notes", "The notes", document.Notes),
        .. document.RowWords.Select((words, at) => ($"/rowWords/{Plain.Number(at)}/text", "The text", words.Text)),
        .. document.Videos.Select((video, at) => ($"/videos/{Plain.Number(at)}/caption", "The caption", video.Caption)),
        .. document.Photos.Select((photo, at) => ($"/photos/{Plain.Number(at)}/caption", "The caption", photo.Caption)),
        .. document.Rows.Steps.SelectMany((step, at) => Stitches(step, $"/rows/steps/{Plain.Number(at)}")),
    ];

    private static IEnumerable<(string Pointer, string Label, string Value)> Stitches(RowStep step, string pointer) => step switch
    {
        EdgeStitch stitch => [(pointer + "/name", "The name of the stitch", stitch.Name)],
        Repeat repeat => repeat.Steps.SelectMany((inner, at) => Stitches(inner, $"{pointer}/steps/{Plain.Number(at)}")),
        _ => [],
    };
}
