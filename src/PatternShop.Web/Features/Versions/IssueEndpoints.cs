using System.Globalization;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>The page on which a maker looks once more at what readers will get, and issues it.</summary>
internal static class IssueEndpoints
{
    public static void MapIssuing(this IEndpointRouteBuilder studio)
    {
        studio.MapPage("/patterns/{id}/issue", IssueAsync);
        studio.MapForm("/patterns/{id}/issue", IssueSentAsync);
    }

    private static async Task<IResult> IssueAsync(string id, HttpContext http, Makers makers, Workroom workroom, Issuer issuer, ShopAddress shop) =>
        await MyPatterns.OpenAsync(id, http, workroom) is { } pattern
            ? await PageAsync(http, await http.MakerAsync(makers), pattern, issuer, shop, new Typed("", []), StatusCodes.Status200OK)
            : Results.NotFound();

    private static async Task<IResult> IssueSentAsync(string id, HttpContext http, Makers makers, Workroom workroom, Issuer issuer, ShopAddress shop)
    {
        if (!PatternId.TryParse(id, out var patternId))
        {
            return Results.NotFound();
        }

        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        if (!long.TryParse(form["revision"], NumberStyles.None, CultureInfo.InvariantCulture, out var revision))
        {
            return Results.StatusCode(StatusCodes.Status400BadRequest);
        }

        var maker = await http.MakerAsync(makers);
        var note = form["Note"].ToString().ReplaceLineEndings("\n").Trim();
        switch (await issuer.IssueAsync(maker, patternId, revision, note, http.RequestAborted))
        {
            case IssueOutcome.Issued:
                return new SeeOther(LocalAddress.Studio);
            case IssueOutcome.Missing:
                return Results.NotFound();
            case IssueOutcome.NothingNew:
                return NothingNew();
            case IssueOutcome.Refused refused:
                return await AgainAsync(new Typed(note, refused.Problems), StatusCodes.Status422UnprocessableEntity);
            default:
                var changed = new FieldProblem("Note", "The pattern was changed or issued from another window while you were here.", "This is how it stands now: look it over, then issue it.");
                return await AgainAsync(new Typed(note, [changed]), StatusCodes.Status409Conflict);
        }

        async Task<IResult> AgainAsync(Typed typed, int status) => await MyPatterns.OpenAsync(id, http, workroom) is { } pattern
            ? await PageAsync(http, maker, pattern, issuer, shop, typed, status)
            : Results.NotFound();
    }

    private static async Task<IResult> PageAsync(HttpContext http, Maker maker, OpenPattern pattern, Issuer issuer, ShopAddress shop, Typed typed, int status) => new HtmlPage<IssuePage>(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(IssuePage.Maker)] = maker,
            [nameof(IssuePage.Pattern)] = pattern,
            [nameof(IssuePage.Piece)] = Piece.Of(pattern.Document),
            [nameof(IssuePage.Date)] = issuer.Today(maker),
            [nameof(IssuePage.ShopAddress)] = await shop.CurrentAsync(http.RequestAborted),
            [nameof(IssuePage.Note)] = typed.Note,
            [nameof(IssuePage.Problems)] = typed.Problems,
        },
        status);

    private static HtmlPage<NoticePage> NothingNew() => NoticePage.Of(
        StatusCodes.Status409Conflict,
        "Readers have this already",
        "Nothing has changed since the newest version, so there is nothing to issue.",
        "Back to my patterns",
        LocalAddress.Studio);

    private sealed record Typed(string Note, IReadOnlyList<FieldProblem> Problems);
}
