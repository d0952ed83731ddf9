using System.Globalization;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>What readers see of issued patterns: plain pages without a circuit, a cookie or a script.</summary>
internal static class PublicPages
{
    public static void AddPublicPages(this IServiceCollection services)
    {
        services.AddSingleton<PieceShelf>();
        services.AddSingleton<FileShelf>();
        services.AddSingleton<ComparisonShelf>();
        services.AddSingleton<VersionReader>();
        services.AddSingleton<SlipFiles>();
        services.AddSingleton<LinkPictures>();
    }

    public static void MapPublicPages(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/", FrontAsync);
        routes.MapPage("/p/{id}", (string id, HttpContext http, PublicShelf shelf, VersionReader reader, ShopAddress shop) => PageAsync(id, "", null, http, shelf, reader, shop));
        routes.MapPage("/p/{id}/{slug}", (string id, string slug, HttpContext http, PublicShelf shelf, VersionReader reader, ShopAddress shop) => PageAsync(id, slug, null, http, shelf, reader, shop));
        routes.MapPage("/p/{id}/{slug}/v/{number:int}", (string id, string slug, int number, HttpContext http, PublicShelf shelf, VersionReader reader, ShopAddress shop) => PageAsync(id, slug, number, http, shelf, reader, shop));
        routes.MapPage("/p/{id}/v/{number:int}/picture.svg", PictureAsync);
        routes.MapLinkPictures();
        routes.MapFiles();
    }

    /// <summary>The address of a pattern's newest version, or of one version, from the top of the shop.</summary>
    public static string Address(PatternId id, string title, int? number = null) =>
        $"/p/{id}/{Slug.Of(title)}" + (number is { } one ? string.Create(CultureInfo.InvariantCulture, $"/v/{one}") : "");

    private static async Task<IResult> FrontAsync(HttpContext http, PublicShelf shelf) => new HtmlPage<ShopFrontPage>(
        new Dictionary<string, object?>(StringComparer.Ordinal) { [nameof(ShopFrontPage.Patterns)] = await shelf.ListAsync(http.RequestAborted) });

    private static async Task<IResult> PageAsync(string id, string slug, int? number, HttpContext http, PublicShelf shelf, VersionReader reader, ShopAddress shop)
    {
        if (!PatternId.TryParse(id, out var patternId) || await shelf.FindAsync(patternId, http.RequestAborted) is not { } pattern)
        {
            return Results.NotFound();
        }

        if (pattern.Withdrawn)
        {
            return Withdrawn();
        }

        if (await reader.FindAsync(patternId, number ?? pattern.Versions[0].Number, http.RequestAborted) is not { } found)
        {
            return Results.NotFound();
        }

        if (slug != Slug.Of(pattern.Title))
        {
            return Results.LocalRedirect(Address(patternId, pattern.Title, number) + http.Request.QueryString, permanent: true);
        }

        var address = await shop.CurrentAsync(http.RequestAborted);
        var (shown, newest) = (found.Version.Number, pattern.Versions[0].Number);
        return new HtmlPage<PublishedPage>(new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(PublishedPage.Pattern)] = pattern,
            [nameof(PublishedPage.Version)] = found.Version,
            [nameof(PublishedPage.Piece)] = found.Piece,
            [nameof(PublishedPage.Canonical)] = Canonical(address, pattern, shown),
            [nameof(PublishedPage.Picture)] = address is null ? null : address + LinkPictureEndpoints.Address(patternId, shown),
            [nameof(PublishedPage.Since)] = shown > 1 ? await reader.CompareAsync(patternId, shown - 1, shown, http.RequestAborted) : null,
            [nameof(PublishedPage.Newer)] = shown < newest ? await reader.CompareAsync(patternId, shown, newest, http.RequestAborted) : null,
        });
    }

    // The page of the newest version has two addresses; the one without a number is the one to keep.
    private static string? Canonical(string? shop, ShelfPattern pattern, int number) =>
        shop is null ? null : shop + Address(pattern.Id, pattern.Title, number == pattern.Versions[0].Number ? null : number);

    private static async Task<IResult> PictureAsync(string id, int number, HttpContext http, PublicShelf shelf, PieceShelf pieces)
    {
        if (!PatternId.TryParse(id, out var patternId) || await shelf.VersionAsync(patternId, number, http.RequestAborted) is not { } version)
        {
            return Results.NotFound();
        }

        http.Response.Headers.CacheControl = "public, max-age=86400";
        return Results.Text(CardPicture.Svg(pieces.Of(version.Canonical), "picture"), "image/svg+xml");
    }

    internal static HtmlPage<NoticePage> Withdrawn() => NoticePage.Of(
        StatusCodes.Status410Gone,
        "This pattern was withdrawn",
        "Its maker has taken it off the shelf. A copy that you have printed or kept is still yours to weave from.");
}
