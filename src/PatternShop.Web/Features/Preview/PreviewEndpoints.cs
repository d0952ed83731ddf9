using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A look at a pattern on a phone before it is issued, at a private address that ends when the maker says so.</summary>
internal static class PreviewEndpoints
{
    private static readonly string[] FileNames = ["a4.pdf", "letter.pdf", "chart.svg", "directions.txt"];

    public static void MapPreviews(this IEndpointRouteBuilder routes)
    {
        var readers = routes.MapGroup("/preview").AddEndpointFilter(Private).WithMetadata(new PrivateAddress());
        readers.MapPage("/{secret}", PageAsync);
        readers.MapPage("/{secret}/weave", WeaveAsync);
        readers.MapPage("/{secret}/{file}", FileAsync);
        readers.MapPage("/{secret}/photos/{hash}.jpg", PhotoAsync).WithMetadata(PhotoEndpoints.Policy);
    }

    public static void MapPreviewing(this IEndpointRouteBuilder studio)
    {
        studio.MapPage("/patterns/{id}/preview", StudioAsync);
        studio.MapForm("/patterns/{id}/preview", BeginSentAsync);
        studio.MapForm("/patterns/{id}/preview/end", EndSentAsync);
    }

    private static async Task<IResult> PhotoAsync(string secret, string hash, HttpContext http, PhotoDesk photos) =>
        await photos.PreviewedAsync(secret, hash, http.RequestAborted) is { } bytes ? Results.Bytes(bytes, PhotoEndpoints.MediaType) : Results.NotFound();

    private static async Task<IResult> PageAsync(string secret, HttpContext http, PreviewDesk desk, PhotoDesk photos)
    {
        if (await desk.FindAsync(secret, http.RequestAborted) is not { } preview)
        {
            return Ended();
        }

        return new HtmlPage<PreviewPage>(new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(PreviewPage.Preview)] = preview,
            [nameof(PreviewPage.Piece)] = Piece.Of(preview.Document),
            [nameof(PreviewPage.Along)] = WeaveEndpoints.Address($"/preview/{secret}"),
            [nameof(PreviewPage.Photos)] = PhotoLinks.Of(await photos.PreviewedAsync(secret, http.RequestAborted), hash => $"/preview/{secret}/photos/{hash}.jpg"),
            [nameof(PreviewPage.Files)] = Editions.All.Where(edition => FileNames.Contains(edition.Kind))
                .Select(edition => new FileLink(edition.Title, $"/preview/{secret}/{edition.Kind}", edition.MediaType, 0))
                .ToList(),
        });
    }

    private static async Task<IResult> WeaveAsync(string secret, HttpContext http, PreviewDesk desk) =>
        await desk.FindAsync(secret, http.RequestAborted) is { } preview
            ? WeaveEndpoints.Preview(preview, $"/preview/{secret}", LostQuery.Of(http.Request.Query))
            : Ended();

    private static async Task<IResult> FileAsync(string secret, string file, HttpContext http, PreviewDesk desk, Wording words)
    {
        if (!FileNames.Contains(file, StringComparer.Ordinal) || await desk.FindAsync(secret, http.RequestAborted) is not { } preview)
        {
            return Results.NotFound();
        }

        var edition = Editions.All.Single(edition => edition.Kind == file);
        return Results.Bytes(edition.Make(Piece.Of(preview.Document), Print.VersionLine.Test, words), edition.MediaType, "preview." + edition.Kind);
    }

    private static async Task<IResult> StudioAsync(string id, HttpContext http, Makers makers, Workroom workroom, PreviewDesk desk) =>
        await MyPatterns.OpenAsync(id, http, workroom) is { } pattern ? await StudioPageAsync(http, makers, desk, pattern, null) : Results.NotFound();

    private static async Task<IResult> StudioPageAsync(HttpContext http, Makers makers, PreviewDesk desk, OpenPattern pattern, string? address) =>
        new HtmlPage<PreviewStudioPage>(new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(PreviewStudioPage.Maker)] = await http.MakerAsync(makers),
            [nameof(PreviewStudioPage.Pattern)] = pattern,
            [nameof(PreviewStudioPage.Began)] = await desk.BeganAsync(http.User.Maker(), pattern.Id, http.RequestAborted),
            [nameof(PreviewStudioPage.Address)] = address,
        });

    // The answer to the form is the page itself: to send the browser on would put the secret into an address bar and a history.
    private static async Task<IResult> BeginSentAsync(string id, HttpContext http, Makers makers, Workroom workroom, PreviewDesk desk, ShopAddress shop, ShopEvents events)
    {
        if (await MyPatterns.OpenAsync(id, http, workroom) is not { } pattern || await desk.BeginAsync(http.User.Maker(), pattern.Id, http.RequestAborted) is not { } secret)
        {
            return Results.NotFound();
        }

        events.PreviewBegan(http.User.Maker(), pattern.Id);
        var address = $"{await shop.CurrentAsync(http.RequestAborted) ?? $"{http.Request.Scheme}://{http.Request.Host}"}/preview/{secret}";
        return await StudioPageAsync(http, makers, desk, pattern, address);
    }

    private static async Task<IResult> EndSentAsync(string id, HttpContext http, Workroom workroom, PreviewDesk desk, ShopEvents events)
    {
        if (await MyPatterns.OpenAsync(id, http, workroom) is not { } pattern)
        {
            return Results.NotFound();
        }

        if (await desk.EndAsync(http.User.Maker(), pattern.Id, http.RequestAborted))
        {
            events.PreviewEnded(http.User.Maker(), pattern.Id);
        }

        return new SeeOther($"{MyPatterns.Address(pattern.Id)}/preview");
    }

    private static HtmlPage<NoticePage> Ended() => NoticePage.Of(
        StatusCodes.Status404NotFound, "There is no such preview", "Its maker has ended it, or begun a new one at another address.");

    private static ValueTask<object?> Private(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        context.HttpContext.Response.Headers.CacheControl = "no-store";
        context.HttpContext.Response.Headers["X-Robots-Tag"] = "noindex";
        return next(context);
    }
}
