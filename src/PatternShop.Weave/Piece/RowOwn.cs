namespace PatternShop.Weave;

/// <summary>What the maker says and shows at one row.</summary>
/// <param name="Words">Their words; empty without any.</param>
/// <param name="Videos">Videos about that row.</param>
/// <param name="Photos">Photos of that row.</param>
public sealed record RowOwn(string Words, Sequence<Video> Videos, Sequence<Photo> Photos)
{
    public static RowOwn None { get; } = new("", [], []);

    /// <summary>Whether there is nothing.</summary>
    public bool IsNone => Words.Length == 0 && Videos.Count == 0 && Photos.Count == 0;
}

/// <summary>Finds what the maker bound to chart rows at the rows that weave them.</summary>
public static class MakersOwn
{
    /// <summary>What the maker says and shows at a row of the piece, from 1. A plain row has nothing.</summary>
    public static RowOwn OwnAt(this Piece piece, int number)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var document = piece.Document;
        if (piece.Rows[number - 1].ChartRow is not { } row || (document.RowWords.Count == 0 && document.Videos.Count == 0 && document.Photos.Count == 0))
        {
            return RowOwn.None;
        }

        return new RowOwn(
            document.RowWords.FirstOrDefault(words => words.Row == row)?.Text ?? "",
            document.Videos.Where(video => video.Row == row).ToSequence(),
            document.Photos.Where(photo => photo.Row == row).ToSequence());
    }
}
