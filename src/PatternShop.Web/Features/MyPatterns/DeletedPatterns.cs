using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Throwing patterns away, and the way back from there.</summary>
internal static class DeletedPatterns
{
    public const string Path = LocalAddress.Studio + "/deleted";

    public static void MapDeletedPatterns(this IEndpointRouteBuilder studio)
    {
        studio.MapPage("/patterns/{id}/delete", DeleteAsync);
        studio.MapForm("/patterns/{id}/delete", DeleteSentAsync);
        studio.MapPage("/deleted", ListAsync);
        studio.MapPage("/deleted/{id}/picture.svg", PictureAsync);
        studio.MapForm("/deleted/{id}/bring-back", BringBackSentAsync);
    }

    public static string Address(PatternId id) => $"{Path}/{id}";

    private static async Task<IResult> DeleteAsync(string id, HttpContext http, Makers makers, Workroom workroom, TimeProvider time) =>
        await MyPatterns.OpenAsync(id, http, workroom) switch
        {
            null => Results.NotFound(),
            { Versions.Count: > 0 } => Issued(),
            var pattern => new HtmlPage<DeletePage>(new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                [nameof(DeletePage.Maker)] = await http.MakerAsync(makers),
                [nameof(DeletePage.Pattern)] = pattern,
                [nameof(DeletePage.KeptUntil)] = time.GetUtcNow() + Deleted.Kept,
            }),
        };

    private static async Task<IResult> DeleteSentAsync(string id, HttpContext http, Workroom workroom, ShopEvents events)
    {
        if (await MyPatterns.OpenAsync(id, http, workroom) is not { } pattern)
        {
            return Results.NotFound();
        }

        if (!await workroom.DeleteAsync(http.User.Maker(), pattern.Id, http.RequestAborted))
        {
            return Issued();
        }

        events.Deleted(http.User.Maker(), pattern.Id);
        return new SeeOther($"{LocalAddress.Studio}?deleted={pattern.Id}");
    }

    private static async Task<IResult> ListAsync(HttpContext http, Makers makers, Workroom workroom) => new HtmlPage<DeletedPage>(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(DeletedPage.Maker)] = await http.MakerAsync(makers),
            [nameof(DeletedPage.Patterns)] = await workroom.DeletedAsync(http.User.Maker(), http.RequestAborted),
        });

    private static async Task<IResult> PictureAsync(string id, HttpContext http, Workroom workroom) =>
        PatternId.TryParse(id, out var pattern) && await workroom.DeletedDocumentAsync(http.User.Maker(), pattern, http.RequestAborted) is { } document
            ? MyPatterns.Picture(http, document)
            : Results.NotFound();

    private static async Task<IResult> BringBackSentAsync(string id, HttpContext http, Workroom workroom, ShopEvents events)
    {
        if (!PatternId.TryParse(id, out var pattern))
        {
            return Results.NotFound();
        }

        var maker = http.User.Maker();
        if (await workroom.BringBackAsync(maker, pattern, http.RequestAborted))
        {
            events.BroughtBack(maker, pattern);
            return new SeeOther(LocalAddress.Studio);
        }

        // asked for twice, it is back all the same
        return await workroom.OpenAsync(maker, pattern, http.RequestAborted) is not null
            ? new SeeOther(LocalAddress.Studio)
            : Results.NotFound();
    }

    private static HtmlPage<NoticePage> Issued() => NoticePage.Of(
        StatusCodes.Status409Conflict,
        "What was issued stays",
        "Readers may hold a copy of it. You can withdraw the pattern, so that nobody finds it any more.",
        "Back to my patterns",
        LocalAddress.Studio);
}
