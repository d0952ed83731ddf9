using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Weaving along, row by row: one page for the newest version, for each version and for each sample.</summary>
internal static class WeaveEndpoints
{
    private const string Name = "/weave";

    public static void MapWeaveAlong(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/samples/{name}" + Name, Sample);
        routes.MapPage("/p/{id}/{slug}" + Name, (string id, string slug, HttpContext http, PublicShelf shelf, PieceShelf pieces, Wording words) => PublishedAsync(id, slug, null, http, shelf, pieces, words));
        routes.MapPage("/p/{id}/{slug}/v/{number:int}" + Name, (string id, string slug, int number, HttpContext http, PublicShelf shelf, PieceShelf pieces, Wording words) => PublishedAsync(id, slug, number, http, shelf, pieces, words));
    }

    /// <summary>Where one weaves along from the page at an address.</summary>
    public static string Address(string page) => page + Name;

    private static IResult Sample(string name, HttpContext http, SampleShelf shelf) => shelf.Find(name) is { } sample
        ? Page(new WeaveCopy("sample-" + name, 0, 0) { Lost = LostQuery.Of(http.Request.Query) }, sample.Piece, $"/samples/{name}")
        : SampleEndpoints.Unknown();

    /// <summary>Weaving along with what is not issued; the place is kept under the pattern, never under the private address.</summary>
    public static IResult Preview(PreviewedPattern preview, string address, LostQuery lost) =>
        Page(new WeaveCopy($"preview-{preview.Id}", 0, 0) { Lost = lost }, Piece.Of(preview.Document), address, isPreview: true);

    private static async Task<IResult> PublishedAsync(string id, string slug, int? number, HttpContext http, PublicShelf shelf, PieceShelf pieces, Wording words)
    {
        if (!PatternId.TryParse(id, out var patternId) || await shelf.FindAsync(patternId, http.RequestAborted) is not { } pattern)
        {
            return Results.NotFound();
        }

        if (pattern.Withdrawn)
        {
            return PublicPages.Withdrawn();
        }

        var newest = pattern.Versions[0];
        if (await shelf.VersionAsync(patternId, number ?? newest.Number, http.RequestAborted) is not { } version)
        {
            return Results.NotFound();
        }

        var address = PublicPages.Address(patternId, pattern.Title, number);
        if (slug != Slug.Of(pattern.Title))
        {
            return Results.LocalRedirect(Address(address) + http.Request.QueryString, permanent: true);
        }

        var newer = newest.Number == version.Number ? null : new NewerVersion(newest, Address(PublicPages.Address(patternId, pattern.Title)), Changes.Address(pattern, version.Number, newest.Number));
        var copy = new WeaveCopy(id, version.Number, newest.Number)
        {
            Lost = LostQuery.Of(http.Request.Query),
            Versions = new WeaveVersions(
                $"{words.VersionText(newest.Number, newest.Date)}, {(newest.Kind == VersionKind.Correction ? "a correction" : "a new edition of the design")}",
                $"{PublicPages.Address(patternId, pattern.Title)}/v/{{number}}{Name}",
                Changes.MovesForm(patternId)),
            Report = ReportEndpoints.Address(patternId, pattern.Title, version.Number),
        };
        return Page(copy, pieces.Of(version.Canonical), address, newer);
    }

    private static HtmlPage<WeavePage> Page(WeaveCopy copy, Piece piece, string back, NewerVersion? newer = null, bool isPreview = false) => new(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(WeavePage.Copy)] = copy,
            [nameof(WeavePage.Piece)] = piece,
            [nameof(WeavePage.Back)] = back,
            [nameof(WeavePage.Newer)] = newer,
            [nameof(WeavePage.IsPreview)] = isPreview,
        });
}

/// <summary>A version that is newer than the one on the page, where to weave along with it, and what changed since.</summary>
public sealed record NewerVersion(ShelfVersion Version, string Address, string Changes);
