using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>The maker's table: what lies on it, what comes new, what is hidden.</summary>
internal static class MyPatterns
{
    public static string Address(PatternId id) => $"{LocalAddress.Studio}/patterns/{id}";

    public static void MapMyPatterns(this IEndpointRouteBuilder studio)
    {
        studio.MapPage("/", ListAsync);
        studio.MapPage("/new", NewAsync);
        studio.MapForm("/new", NewSentAsync);
        studio.MapPage("/patterns/{id}/picture.svg", PictureAsync);
        studio.MapPage("/patterns/{id}/document.json", DocumentAsync);
        studio.MapForm("/patterns/{id}/duplicate", DuplicateSentAsync);
        studio.MapForm("/patterns/{id}/withdraw", WithdrawSentAsync);
        studio.MapForm("/patterns/{id}/restore", RestoreSentAsync);
        studio.MapDeletedPatterns();
        studio.MapBringingIn();
    }

    private static async Task<IResult> ListAsync(HttpContext http, Makers makers, Workroom workroom, ReportDesk reports)
    {
        var deleted = await workroom.DeletedAsync(http.User.Maker(), http.RequestAborted);
        return new HtmlPage<MyPatternsPage>(new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(MyPatternsPage.Maker)] = await http.MakerAsync(makers),
            [nameof(MyPatternsPage.Patterns)] = await workroom.ListAsync(http.User.Maker(), http.RequestAborted),
            [nameof(MyPatternsPage.Find)] = http.Request.Query["find"].ToString().Trim(),
            [nameof(MyPatternsPage.Waiting)] = await reports.WaitingAsync(http.User.Maker(), http.RequestAborted),
            [nameof(MyPatternsPage.Deleted)] = deleted.Count,
            [nameof(MyPatternsPage.JustDeleted)] = deleted.FirstOrDefault(card => card.Id.Value == http.Request.Query["deleted"]),
        });
    }

    private static async Task<IResult> NewAsync(HttpContext http, Makers makers) =>
        NewPage(await http.MakerAsync(makers), BlankPattern.Begin, [], StatusCodes.Status200OK);

    private static async Task<IResult> NewSentAsync(HttpContext http, Makers makers, Workroom workroom, SampleShelf shelf)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        IReadOnlyList<FieldProblem> problems = [];
        var document = form["sample"].ToString() is { Length: > 0 } name
            ? shelf.Find(name)?.Document
            : BlankPattern.Read(form).Document(out problems);
        if (document is not null)
        {
            return new SeeOther(Address(await workroom.CreateAsync(http.User.Maker(), document, http.RequestAborted)));
        }

        return problems.Count == 0
            ? Results.NotFound()
            : NewPage(await http.MakerAsync(makers), BlankPattern.Read(form), problems, StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> PictureAsync(string id, HttpContext http, Workroom workroom) =>
        await OpenAsync(id, http, workroom) is { } pattern ? Picture(http, pattern.Document) : Results.NotFound();

    /// <summary>A small picture, at an address that names the revision.</summary>
    internal static IResult Picture(HttpContext http, PatternDocument document)
    {
        http.Response.Headers.CacheControl = "private, max-age=86400";
        return Results.Text(CardPicture.Svg(Piece.Of(document), "picture"), "image/svg+xml");
    }

    // the whole document, as it stands now: whoever has the file can read it
    private static async Task<IResult> DocumentAsync(string id, HttpContext http, Workroom workroom) =>
        await OpenAsync(id, http, workroom) is { } pattern
            ? Results.Bytes(PatternWriter.ReadableBytes(pattern.Document), "application/json", $"pattern-{pattern.Id}.json")
            : Results.NotFound();

    private static async Task<IResult> DuplicateSentAsync(string id, HttpContext http, Workroom workroom) =>
        PatternId.TryParse(id, out var pattern) && await workroom.DuplicateAsync(http.User.Maker(), pattern, CopyOf, http.RequestAborted) is { } copy
            ? new SeeOther(Address(copy))
            : Results.NotFound();

    /// <summary>The title of a copy, cut where it would be too long; never within a character.</summary>
    internal static string CopyOf(string title)
    {
        const string Before = "Copy of ";
        var most = Bounds.Title - Before.Length;
        var length = title.Length <= most ? title.Length : char.IsHighSurrogate(title[most - 1]) ? most - 1 : most;
        return Before + title[..length].TrimEnd();
    }

    private static async Task<IResult> WithdrawSentAsync(string id, HttpContext http, Workroom workroom, FileShelf files, ShopEvents events)
    {
        var done = PatternId.TryParse(id, out var pattern) && await workroom.WithdrawAsync(http.User.Maker(), pattern, http.RequestAborted);
        files.Forget();
        if (!done)
        {
            return Results.NotFound();
        }

        events.Withdrawn(http.User.Maker(), pattern);
        return new SeeOther(LocalAddress.Studio);
    }

    private static async Task<IResult> RestoreSentAsync(string id, HttpContext http, Workroom workroom, ShopEvents events)
    {
        if (!PatternId.TryParse(id, out var pattern) || !await workroom.RestoreAsync(http.User.Maker(), pattern, http.RequestAborted))
        {
            return Results.NotFound();
        }

        events.Restored(http.User.Maker(), pattern);
        return new SeeOther(LocalAddress.Studio);
    }

    /// <summary>The maker's own pattern of that id; null when they have none such.</summary>
    internal static async Task<OpenPattern?> OpenAsync(string id, HttpContext http, Workroom workroom) =>
        PatternId.TryParse(id, out var pattern) ? await workroom.OpenAsync(http.User.Maker(), pattern, http.RequestAborted) : null;

    private static HtmlPage<NewPatternPage> NewPage(Maker maker, BlankPattern blank, IReadOnlyList<FieldProblem> problems, int status) => new(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(NewPatternPage.Maker)] = maker,
            [nameof(NewPatternPage.Blank)] = blank,
            [nameof(NewPatternPage.Problems)] = problems,
        },
        status);
}
