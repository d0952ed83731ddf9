namespace PatternShop.Weave;

/// <summary>What must hold of the maker's own words, videos, photos and limits.</summary>
internal static class MakersOwnRules
{
    public static void Check(RuleProblems problems, PatternDocument document, KnownSizes sizes)
    {
        RowWords(problems, document.RowWords, sizes);
        Videos(problems, document.Videos, sizes);
        Photos(problems, document.Photos, sizes);
    }

    public static void Check(RuleProblems problems, Limits? limits)
    {
        if (limits is null)
        {
            return;
        }

        problems.Require(
            limits is not { Threads: null, Length: null },
            ProblemCodes.LimitsEmpty,
            "/limits",
            "The limits say neither threads nor a length.",
            "Give one of them or both, or take the limits away.");
        problems.Require(
            limits.Threads is null or (>= 1 and <= Bounds.LimitThreads),
            ProblemCodes.LimitThreads,
            "/limits/threads",
            $"The longest float would be {Plain.Count(limits.Threads ?? 0, "thread")}.",
            $"Choose 1 to {Plain.Number(Bounds.LimitThreads)} threads.");
        var amount = limits.Length?.Amount ?? 1;
        problems.Require(
            amount is > 0 and <= Bounds.LimitLength,
            ProblemCodes.LimitLength,
            "/limits/length/amount",
            $"The length of the longest float is {Plain.Number(amount)}.",
            $"Choose an amount above 0, at most {Plain.Number(Bounds.LimitLength)}.");
        DocumentRules.Places(problems, "/limits/length/amount", "length", amount);
    }

    private static void RowWords(RuleProblems problems, Sequence<RowWords> all, KnownSizes sizes)
    {
        var before = 0;
        foreach (var (index, words) in all.Index())
        {
            var pointer = $"/rowWords/{Plain.Number(index)}";
            Row(problems, pointer, words.Row, sizes);
            problems.Require(
                words.Row > before || words.Row < 1,
                ProblemCodes.RowWordsOrder,
                pointer + "/row",
                $"The words of row {Plain.Number(words.Row)} stand after those of row {Plain.Number(before)}.",
                "Name the rows upwards, each once.");
            before = Math.Max(before, words.Row);
            TextRules.Words(problems, pointer + "/text", "The text", words.Text, Bounds.RowWords);
        }
    }

    private static void Videos(RuleProblems problems, Sequence<Video> videos, KnownSizes sizes)
    {
        Count(problems, "/videos", videos.Count, "video", Bounds.Videos, ProblemCodes.VideoCount);
        foreach (var (index, video) in videos.Index())
        {
            var pointer = $"/videos/{Plain.Number(index)}";
            problems.Require(
                video.Address.Length <= Bounds.VideoAddress && WebAddress.Host(video.Address) is not null,
                ProblemCodes.VideoAddress,
                pointer + "/address",
                $"{Plain.Quote(video.Address)} is not an address that can be linked to.",
                $"Copy the address of the video's page; it begins with https:// and has at most {Plain.Number(Bounds.VideoAddress)} characters.");
            TextRules.Line(problems, pointer + "/caption", "The caption", video.Caption, Bounds.Caption);
            Row(problems, pointer, video.Row, sizes);
        }
    }

    private static void Photos(RuleProblems problems, Sequence<Photo> photos, KnownSizes sizes)
    {
        Count(problems, "/photos", photos.Count, "photo", Bounds.Photos, ProblemCodes.PhotoCount);
        var met = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (index, photo) in photos.Index())
        {
            var pointer = $"/photos/{Plain.Number(index)}";
            problems.Require(
                photo.Hash.Length == 64 && photo.Hash.All(char.IsAsciiHexDigitLower),
                ProblemCodes.PhotoHash,
                pointer + "/hash",
                $"{Plain.Quote(photo.Hash)} does not name a picture.",
                "Write the SHA-256 of the stored picture, 64 digits of 0–9 and a–f.");
            problems.Require(
                met.Add(photo.Hash),
                ProblemCodes.PhotoTwice,
                pointer + "/hash",
                "This photo stands in the list already.",
                "Name each photo once.");
            TextRules.Line(problems, pointer + "/caption", "The caption", photo.Caption, Bounds.Caption);
            Row(problems, pointer, photo.Row, sizes);
        }
    }

    private static void Count(RuleProblems problems, string pointer, int count, string one, int most, string code) => problems.Require(
        count <= most,
        code,
        pointer,
        $"There are {Plain.Count(count, one)}; at most {Plain.Number(most)} are allowed.",
        "Take some away.");

    private static void Row(RuleProblems problems, string pointer, int? row, KnownSizes sizes) => problems.Require(
        row is null || (row >= 1 && row <= (sizes.MotifRows ?? Bounds.MotifRows)),
        ProblemCodes.ChartRow,
        pointer + "/row",
        sizes.MotifRows is { } rows ? $"There is no row {Plain.Number(row ?? 0)}: the motif has {Plain.Count(rows, "row")}." : $"There is no row {Plain.Number(row ?? 0)}.",
        "Choose a row of the motif; the first is 1.");
}
