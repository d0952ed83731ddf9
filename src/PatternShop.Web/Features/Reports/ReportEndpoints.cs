using System.Globalization;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Mistakes that readers report, without an account, and what makers answer. The form sets the one cookie that proves it was ours, and no other page of a reader's does.</summary>
internal static class ReportEndpoints
{
    public static void MapReports(this IEndpointRouteBuilder routes)
    {
        var readers = routes.MapGroup("").AddEndpointFilter(NeverKept);
        readers.MapPage("/p/{id}/{slug}/v/{number:int}/report", FormAsync);
        readers.MapForm("/p/{id}/{slug}/v/{number:int}/report", SentAsync);
        readers.MapPage("/reports/{secret}", SeenAsync).WithMetadata(new PrivateAddress());
    }

    public static void MapReportDesk(this IEndpointRouteBuilder studio)
    {
        studio.MapPage("/patterns/{id}/reports", DeskAsync);
        studio.MapForm("/patterns/{id}/reports/{report:long}", AnswerSentAsync);
    }

    /// <summary>The address of the form, from the top of the shop.</summary>
    public static string Address(PatternId id, string title, int number) => PublicPages.Address(id, title, number) + "/report";

    /// <summary>The address of a form with a row filled in.</summary>
    public static string RowAddress(string form, int row) => string.Create(CultureInfo.InvariantCulture, $"{form}?row={row}");

    private static async Task<IResult> FormAsync(string id, int number, string? row, HttpContext http, VersionReader reader) =>
        PatternId.TryParse(id, out var pattern) && await reader.FindAsync(pattern, number, http.RequestAborted) is { } found
            ? Form(found, new ReportForm(row ?? "", "", ""), [], StatusCodes.Status200OK)
            : Results.NotFound();

    private static async Task<IResult> SentAsync(string id, int number, HttpContext http, VersionReader reader, ReportDesk desk, ReportThrottle throttle)
    {
        if (!PatternId.TryParse(id, out var pattern) || await reader.FindAsync(pattern, number, http.RequestAborted) is not { } found)
        {
            return Results.NotFound();
        }

        var form = ReportForm.Read(await http.Request.ReadFormAsync(http.RequestAborted));
        var report = form.Report(found.Piece.Rows.Count, out var problems);
        if (problems.Count > 0)
        {
            return Form(found, form, problems, StatusCodes.Status422UnprocessableEntity);
        }

        if (throttle.Wait(http) is { } wait)
        {
            http.Response.Headers.RetryAfter = Math.Ceiling(wait.TotalSeconds).ToString(CultureInfo.InvariantCulture);
            return Form(found, form, [new FieldProblem("Text", "Too many reports came from your network.", "Keep this page open and send it again in an hour.")], StatusCodes.Status429TooManyRequests);
        }

        return await desk.SendAsync(pattern, number, report, http.RequestAborted) switch
        {
            SendResult.Sent sent => new SeeOther("/reports/" + sent.Secret),
            SendResult.Refused refused => Form(found, form, refused.Problems, StatusCodes.Status422UnprocessableEntity),
            SendResult.Full => Form(found, form, [new FieldProblem("Text", "So many reports wait for this maker that no more are taken now.", "Try again in some days.")], StatusCodes.Status503ServiceUnavailable),
            _ => Results.NotFound(),
        };
    }

    private static async Task<IResult> SeenAsync(string secret, HttpContext http, ReportDesk desk, PublicShelf shelf, VersionReader reader)
    {
        if (await desk.FindAsync(secret, http.RequestAborted) is not { } report || await shelf.FindAsync(report.Pattern, http.RequestAborted) is not { } pattern)
        {
            return Results.NotFound();
        }

        return new HtmlPage<ReportSeenPage>(new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(ReportSeenPage.Report)] = report,
            [nameof(ReportSeenPage.Pattern)] = pattern,
            // null for what readers cannot see
            [nameof(ReportSeenPage.Since)] = report.CorrectedIn is { } number ? await reader.CompareAsync(report.Pattern, report.Number, number, http.RequestAborted) : null,
        });
    }

    private static async Task<IResult> DeskAsync(string id, HttpContext http, Makers makers, Workroom workroom, ReportDesk desk) =>
        await DeskPageAsync(id, http, makers, workroom, desk, null, [], StatusCodes.Status200OK) ?? Results.NotFound();

    private static async Task<IResult> AnswerSentAsync(string id, long report, HttpContext http, Makers makers, Workroom workroom, ReportDesk desk)
    {
        if (!PatternId.TryParse(id, out var pattern))
        {
            return Results.NotFound();
        }

        var answer = (await http.Request.ReadFormAsync(http.RequestAborted))["Answer"].ToString().ReplaceLineEndings("\n").Trim();
        return await desk.AnswerAsync(http.User.Maker(), pattern, report, answer, http.RequestAborted) switch
        {
            null => Results.NotFound(),
            { Count: 0 } => new SeeOther($"{MyPatterns.Address(pattern)}/reports"),
            var problems => await DeskPageAsync(id, http, makers, workroom, desk, (report, answer), problems, StatusCodes.Status422UnprocessableEntity) ?? Results.NotFound(),
        };
    }

    private static async Task<IResult?> DeskPageAsync(
        string id, HttpContext http, Makers makers, Workroom workroom, ReportDesk desk, (long Report, string Answer)? typed, IReadOnlyList<FieldProblem> problems, int status)
    {
        if (await MyPatterns.OpenAsync(id, http, workroom) is not { } pattern || await desk.ListAsync(http.User.Maker(), pattern.Id, http.RequestAborted) is not { } reports)
        {
            return null;
        }

        return new HtmlPage<ReportDeskPage>(
            new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                [nameof(ReportDeskPage.Maker)] = await http.MakerAsync(makers),
                [nameof(ReportDeskPage.Pattern)] = pattern,
                [nameof(ReportDeskPage.Reports)] = reports,
                [nameof(ReportDeskPage.Typed)] = typed,
                [nameof(ReportDeskPage.Problems)] = problems,
            },
            status);
    }

    private static HtmlPage<ReportPage> Form((IssuedVersion Version, Weave.Piece Piece) found, ReportForm form, IReadOnlyList<FieldProblem> problems, int status) => new(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(ReportPage.Version)] = found.Version,
            [nameof(ReportPage.Piece)] = found.Piece,
            [nameof(ReportPage.Form)] = form,
            [nameof(ReportPage.Problems)] = problems,
        },
        status);

    private static ValueTask<object?> NeverKept(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        context.HttpContext.Response.Headers.CacheControl = "no-store";
        return next(context);
    }
}
