using System.Globalization;
using PatternShop.Print;
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
        studio.MapPage("/patterns/{id}/test-print/{file}", TestPrintAsync);
    }

    private static async Task<IResult> IssueAsync(string id, HttpContext http, Makers makers, Workroom workroom, IssueTools tools) =>
        await MyPatterns.OpenAsync(id, http, workroom) is { } pattern
            ? await PageAsync(http, await http.MakerAsync(makers), pattern, tools, new Typed(IssueForm.Blank, []), StatusCodes.Status200OK)
            : Results.NotFound();

    /// <summary>The address of a test print of what is not issued.</summary>
    public static string TestPrintAddress(PatternId id, string file) => $"{MyPatterns.Address(id)}/test-print/{file}";

    // For the maker alone, and marked so on every sheet.
    private static async Task<IResult> TestPrintAsync(string id, string file, HttpContext http, Makers makers, Workroom workroom, Wording words)
    {
        if (Editions.All.Take(Editions.Primary).FirstOrDefault(edition => edition.Kind == file) is not { } edition || await MyPatterns.OpenAsync(id, http, workroom) is not { } pattern)
        {
            return Results.NotFound();
        }

        var version = VersionLine.Test with { Maker = (await http.MakerAsync(makers)).StudioName };
        http.Response.Headers.CacheControl = "no-store";
        return Results.Bytes(edition.Make(Piece.Of(pattern.Document), version, words), edition.MediaType, "test-print." + edition.Kind);
    }

    private static async Task<IResult> IssueSentAsync(string id, HttpContext http, Makers makers, Workroom workroom, IssueTools tools)
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
        var typed = Read(form);
        switch (await tools.Issuer.IssueAsync(maker, patternId, revision, typed, http.RequestAborted))
        {
            case IssueOutcome.Issued:
                return new SeeOther(LocalAddress.Studio);
            case IssueOutcome.Missing:
                return Results.NotFound();
            case IssueOutcome.NothingNew:
                return NothingNew();
            case IssueOutcome.Refused refused:
                return await AgainAsync(new Typed(typed, refused.Problems), StatusCodes.Status422UnprocessableEntity);
            default:
                var changed = new FieldProblem("Note", "The pattern was changed or issued from another window while you were here.", "This is how it stands now: look it over, then issue it.");
                return await AgainAsync(new Typed(typed, [changed]), StatusCodes.Status409Conflict);
        }

        async Task<IResult> AgainAsync(Typed again, int status) => await MyPatterns.OpenAsync(id, http, workroom) is { } pattern
            ? await PageAsync(http, maker, pattern, tools, again, status)
            : Results.NotFound();
    }

    private static IssueForm Read(IFormCollection form) => new(
        form["Note"].ToString().ReplaceLineEndings("\n").Trim(),
        form["Kind"].ToString() switch { "correction" => VersionKind.Correction, "edition" => VersionKind.Edition, _ => null },
        [.. form["Mends"].Select(id => long.TryParse(id, NumberStyles.None, CultureInfo.InvariantCulture, out var report) ? report : -1).Where(report => report >= 0)]);

    private static async Task<IResult> PageAsync(HttpContext http, Maker maker, OpenPattern pattern, IssueTools tools, Typed typed, int status)
    {
        var piece = Piece.Of(pattern.Document);
        return new HtmlPage<IssuePage>(
            new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                [nameof(IssuePage.Maker)] = maker,
                [nameof(IssuePage.Pattern)] = pattern,
                [nameof(IssuePage.Piece)] = piece,
                [nameof(IssuePage.Date)] = tools.Issuer.Today(maker),
                [nameof(IssuePage.ShopAddress)] = await tools.Shop.CurrentAsync(http.RequestAborted),
                [nameof(IssuePage.Since)] = await tools.SinceAsync(maker, pattern, piece, http.RequestAborted),
                [nameof(IssuePage.Reports)] = await tools.Reports.ListAsync(maker.Id, pattern.Id, http.RequestAborted) ?? [],
                [nameof(IssuePage.Form)] = typed.Form,
                [nameof(IssuePage.Problems)] = typed.Problems,
            },
            status);
    }

    private static HtmlPage<NoticePage> NothingNew() => NoticePage.Of(
        StatusCodes.Status409Conflict,
        "Readers have this already",
        "Nothing has changed since the newest version, so there is nothing to issue.",
        "Back to my patterns",
        LocalAddress.Studio);

    private sealed record Typed(IssueForm Form, IReadOnlyList<FieldProblem> Problems);
}

/// <summary>What issuing needs beside the workroom.</summary>
internal sealed record IssueTools(Issuer Issuer, ShopAddress Shop, Workroom Workroom, ReportDesk Reports, Wording Words)
{
    /// <summary>What readers have beside what would be issued; null when they have nothing.</summary>
    public async Task<Comparison?> SinceAsync(Maker maker, OpenPattern pattern, Piece piece, CancellationToken cancellationToken) =>
        pattern is { HasUnissuedChanges: true, Versions: [var newest, ..] } && await Workroom.IssuedAsync(maker.Id, pattern.Id, newest.Number, cancellationToken) is { } issued
            ? Comparison.Of(Piece.Of(issued), piece, Words)
            : null;
}
