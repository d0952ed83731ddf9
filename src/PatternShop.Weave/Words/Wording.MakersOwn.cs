namespace PatternShop.Weave;

public partial class Wording
{
    /// <summary>Stands over everything that is not computed from the chart.</summary>
    public string MakersOwnTitle => "In the maker's own words and pictures";

    public string RowWordsLabel => "Maker's words for rows";

    public string VideosLabel => "Maker's videos";

    public string PhotosLabel => "Maker's photos";

    public string LimitsLabel => "Longest float allowed";

    /// <summary>Stands before the maker's words for a row: "Maker's note".</summary>
    public virtual string RowWordsMark => "Maker's note";

    /// <summary>Stands before a video: "Maker's video".</summary>
    public string VideoMark => "Maker's video";

    /// <summary>A video as text: "How to turn: https://films.example/turn".</summary>
    public string VideoText(Video video)
    {
        ArgumentNullException.ThrowIfNull(video);
        return $"{video.Caption}: {video.Address}";
    }

    /// <summary>What stands below a row in plain text, marked as the maker's; empty where they said nothing.</summary>
    public Sequence<string> OwnLines(RowOwn own)
    {
        ArgumentNullException.ThrowIfNull(own);
        return
        [
            .. own.Words.Length == 0 ? (string[])[] : [$"{RowWordsMark}: {own.Words}"],
            .. own.Videos.Select(video => $"{VideoMark}: {VideoText(video)}"),
        ];
    }

    /// <summary>What a limit says: "3 threads and 0.5 in"; empty without one.</summary>
    public string LimitsText(Limits? limits) => string.Join(" and ", new[]
    {
        limits?.Threads is { } threads ? Count(threads, "thread", "threads") : "",
        limits?.Length is { } length ? LengthShort(length) : "",
    }.Where(text => text.Length > 0));

    /// <summary>"chart row 3"; empty for the whole pattern.</summary>
    public string BoundText(int? row) => row is { } number ? $"chart row {Number(number)}" : "";

    private string RowWordsText(PatternDocument document) =>
        string.Join('\n', document.RowWords.Select(words => $"{Capital(BoundText(words.Row))}: {words.Text}"));

    private string VideosText(PatternDocument document) =>
        string.Join('\n', document.Videos.Select(video => $"{At(video.Row)}{video.Caption}: {video.Address}"));

    // A photo is told by its caption; where the other version shows a different picture by the same caption, that is said.
    private string PhotosText(PatternDocument document, PatternDocument? before) => string.Join('\n', document.Photos.Select(photo =>
    {
        var other = before?.Photos.Any(old => (old.Caption, old.Row) == (photo.Caption, photo.Row)) == true && before.Photos.All(old => old.Hash != photo.Hash);
        return $"{At(photo.Row)}{photo.Caption}{(other ? " (another picture)" : "")}";
    }));

    private string At(int? row) => row is null ? "" : Capital(BoundText(row)) + ": ";
}
