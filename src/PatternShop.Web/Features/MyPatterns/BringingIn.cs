using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Patterns that come as files: each good one becomes a pattern, of each other one every reason is told.</summary>
internal static class BringingIn
{
    public const string Path = LocalAddress.Studio + "/bring-in";

    /// <summary>Files that are taken at once.</summary>
    public const int MostFiles = 20;

    /// <summary>Bytes of all files that are sent at once.</summary>
    public const int MostBytes = 16 * 1024 * 1024;

    // more than is taken: who sends too much is told so on the page, and not by a cut line
    private const long MostSent = 3L * MostBytes;

    private const int Mega = 1024 * 1024;
    private const int LongestName = 120;

    public static void MapBringingIn(this IEndpointRouteBuilder studio)
    {
        studio.MapPage("/bring-in", GetAsync);
        studio.MapForm("/bring-in", SentAsync, MostSent);
    }

    private static async Task<IResult> GetAsync(HttpContext http, Makers makers) => Page(await http.MakerAsync(makers), [], [], StatusCodes.Status200OK);

    private static async Task<IResult> SentAsync(HttpContext http, Makers makers, Workroom workroom, PhotoDesk photos)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        // a form that is sent without a choice holds one file without name and bytes
        var files = form.Files.Where(file => file.Length > 0 || file.FileName.Length > 0).ToList();
        if (Wrong(files) is { } problem)
        {
            return Page(await http.MakerAsync(makers), [], [problem], StatusCodes.Status422UnprocessableEntity);
        }

        var results = new List<BroughtIn>();
        foreach (var file in files)
        {
            results.Add(await TakeAsync(http.User.Maker(), file, workroom, photos, http.RequestAborted));
        }

        return results switch
        {
            [BroughtIn.Made { Lacking.Count: 0 } one] => new SeeOther(MyPatterns.Address(one.Id)),
            _ when results.TrueForAll(result => result is BroughtIn.Made { Lacking.Count: 0 }) => new SeeOther(LocalAddress.Studio),
            _ => Page(
                await http.MakerAsync(makers),
                results,
                [],
                results.Exists(result => result is BroughtIn.Refused) ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK),
        };
    }

    private static FieldProblem? Wrong(List<IFormFile> files) => files.Count switch
    {
        0 => new FieldProblem("Files", "No file came with it.", "Choose one, or drag one onto the box."),
        > MostFiles => new FieldProblem("Files", FormattableString.Invariant($"{files.Count} files came; at most {MostFiles} are taken at once. Nothing was made of them."), "Bring them in one after another."),
        _ when files.Sum(file => file.Length) > MostBytes => new FieldProblem("Files", FormattableString.Invariant($"The files have more than {MostBytes / Mega} MB together. Nothing was made of them."), "Bring them in one after another."),
        _ => null,
    };

    private static async Task<BroughtIn> TakeAsync(MakerId maker, IFormFile file, Workroom workroom, PhotoDesk photos, CancellationToken cancellationToken)
    {
        var name = NameOf(file.FileName);
        await using var content = file.OpenReadStream();
        var bytes = await BoundedReading.BytesAsync(content, Bounds.FileBytes, cancellationToken);
        switch (PatternReader.Read(bytes.Span))
        {
            case ReadResult.Read read:
                var id = await workroom.CreateAsync(maker, read.Document, cancellationToken);
                var kept = (await photos.ListAsync(maker, id, cancellationToken) ?? []).Select(photo => photo.Hash).ToHashSet(StringComparer.Ordinal);
                return new BroughtIn.Made(name, id, read.Document.Title, [.. read.Document.Photos.Where(photo => !kept.Contains(photo.Hash)).Select(photo => photo.Caption)]);
            case ReadResult.Refused refused:
                return new BroughtIn.Refused(name, refused.Problems);
            case var other:
                throw new InvalidOperationException(other.GetType().Name);
        }
    }

    // some send the folder too; the name is only shown
    private static string NameOf(string sent)
    {
        var name = sent[(sent.LastIndexOfAny(['/', '\\']) + 1)..];
        return name.Length <= LongestName ? name : name[..LongestName] + "…";
    }

    private static HtmlPage<BringInPage> Page(Maker maker, IReadOnlyList<BroughtIn> results, IReadOnlyList<FieldProblem> problems, int status) => new(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(BringInPage.Maker)] = maker,
            [nameof(BringInPage.Results)] = results,
            [nameof(BringInPage.Problems)] = problems,
        },
        status);
}
