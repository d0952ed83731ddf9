using System.Globalization;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>For whoever holds an earlier version: what changed since, and where to go on.</summary>
internal static class Changes
{
    public static void MapChanges(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/p/{id}/{slug}/v/{number:int}/changes", PageAsync);
        routes.MapPage("/p/{id}/slip/{from:int}/{to:int}/{file}", SlipAsync);
        routes.MapPage("/p/{id}/moves/{from:int}/{to:int}.json", MovesAsync);
    }

    /// <summary>The address of the figures with which a script tells somebody in the middle of a version where to go on; {from} and {to} stand for versions.</summary>
    public static string MovesForm(PatternId id) => $"/p/{id}/moves/{{from}}/{{to}}.json";

    /// <summary>The address of the page, from the top of the shop.</summary>
    public static string Address(ShelfPattern pattern, int from, int to) =>
        string.Create(CultureInfo.InvariantCulture, $"{PublicPages.Address(pattern.Id, pattern.Title, from)}/changes?to={to}");

    /// <summary>The address of a correction slip.</summary>
    public static string SlipAddress(PatternId id, int from, int to, Print.Paper paper) =>
        string.Create(CultureInfo.InvariantCulture, $"/p/{id}/slip/{from}/{to}/{SlipFiles.NameOf(paper)}");

    private static async Task<IResult> SlipAsync(string id, int from, int to, string file, HttpContext http, PublicShelf shelf, SlipFiles slips)
    {
        if (!PatternId.TryParse(id, out var patternId)
            || await shelf.FindAsync(patternId, http.RequestAborted) is not { Withdrawn: false } pattern
            || await slips.FindAsync(pattern, from, to, file, http.RequestAborted) is not { } bytes)
        {
            return Results.NotFound();
        }

        // versions never change, but they can be withdrawn
        http.Response.Headers.CacheControl = "no-cache";
        var name = string.Create(CultureInfo.InvariantCulture, $"{Slug.Of(pattern.Title)}-v{from}-v{to}.correction.{file}");
        return Results.Bytes(bytes, "application/pdf", name);
    }

    private static async Task<IResult> PageAsync(string id, string slug, int number, int? to, string? woven, HttpContext http, PublicShelf shelf, VersionReader reader)
    {
        if (!PatternId.TryParse(id, out var patternId) || await shelf.FindAsync(patternId, http.RequestAborted) is not { } pattern)
        {
            return Results.NotFound();
        }

        if (pattern.Withdrawn)
        {
            return PublicPages.Withdrawn();
        }

        var target = to ?? pattern.Versions[0].Number;
        if (target <= number || await reader.CompareAsync(patternId, number, target, http.RequestAborted) is not { } comparison)
        {
            return Results.NotFound();
        }

        var rows = Woven(woven, comparison.Old);
        return slug != Slug.Of(pattern.Title)
            ? Results.LocalRedirect(Address(pattern, number, target) + (rows is { } kept ? string.Create(CultureInfo.InvariantCulture, $"&woven={kept}") : ""), permanent: true)
            : new HtmlPage<ChangesPage>(new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                [nameof(ChangesPage.Pattern)] = pattern,
                [nameof(ChangesPage.From)] = pattern.Versions.Single(version => version.Number == number),
                [nameof(ChangesPage.To)] = pattern.Versions.Single(version => version.Number == target),
                [nameof(ChangesPage.Comparison)] = comparison,
                [nameof(ChangesPage.Woven)] = rows,
                [nameof(ChangesPage.Wrong)] = !string.IsNullOrEmpty(woven) && rows is null,
            });
    }

    private static async Task<IResult> MovesAsync(string id, int from, int to, HttpContext http, VersionReader reader, Wording words)
    {
        if (from >= to || !PatternId.TryParse(id, out var pattern) || await reader.CompareAsync(pattern, from, to, http.RequestAborted) is not { Difference: { } difference } comparison)
        {
            return Results.NotFound();
        }

        // versions never change, but they can be withdrawn
        http.Response.Headers.CacheControl = "no-cache";
        return Results.Bytes(MovesJson.Write(comparison, difference, (from, to), words), "application/json");
    }

    // What is typed is a number of rows woven, from none to all.
    private static int? Woven(string? typed, Piece old) =>
        int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out var rows) && rows <= old.Rows.Count ? rows : null;
}
