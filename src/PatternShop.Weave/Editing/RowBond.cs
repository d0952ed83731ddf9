namespace PatternShop.Weave;

/// <summary>
/// Lets what the maker bound to single chart rows follow its row. Whatever edit adds, removes or moves rows of the motif says here where
/// each went. Words of a row that is gone fall away; videos and photos stay, with the whole pattern. Both are said.
/// </summary>
internal static class RowBond
{
    /// <param name="document">The document before.</param>
    /// <param name="newRow">The new number of a chart row, both from 1; null where the row is gone.</param>
    public static (PatternDocument Document, Sequence<Consequence> Consequences) Follow(PatternDocument document, Func<int, int?> newRow)
    {
        bool Gone(int? row) => row is { } number && newRow(number) is null;
        int? Now(int? row) => row is { } number ? newRow(number) : null;
        var followed = document with
        {
            RowWords = document.RowWords
                .Where(words => !Gone(words.Row))
                .Select(words => words with { Row = newRow(words.Row)!.Value })
                .OrderBy(words => words.Row)
                .ToSequence(),
            Videos = document.Videos.Select(video => video with { Row = Now(video.Row) }).ToSequence(),
            Photos = document.Photos.Select(photo => photo with { Row = Now(photo.Row) }).ToSequence(),
        };
        return (followed,
        [
            .. document.RowWords.Where(words => Gone(words.Row)).Select(words => new RowWordsCut(words)),
            .. document.Videos.Where(video => Gone(video.Row)).Select(video => new VideoMoved(video)),
            .. document.Photos.Where(photo => Gone(photo.Row)).Select(photo => new PhotoMoved(photo)),
        ]);
    }
}
