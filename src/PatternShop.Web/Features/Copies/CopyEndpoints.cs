using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Which copy is this? The code on a sheet leads to the answer.</summary>
internal static class CopyEndpoints
{
    public static void MapCopies(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/c", (string? code) => Asked(code));
        routes.MapPage("/c/{code}", CopyAsync);
    }

    private static IResult Asked(string? typed) => CopyCode.TryParse(typed, out var code)
        ? Results.LocalRedirect("/c/" + code!.Value)
        : Form(typed ?? "", string.IsNullOrWhiteSpace(typed) ? "" : "That is not a code. It has eight letters and digits, such as ABCD-1234.", string.IsNullOrWhiteSpace(typed) ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> CopyAsync(string code, HttpContext http, PublicShelf shelf, VersionReader reader)
    {
        if (!CopyCode.TryParse(code, out var parsed) || await shelf.CopyAsync(parsed!, http.RequestAborted) is not { } copy)
        {
            return Form(code, "No sheet of this shop has that code. Compare it with the foot of the sheet, sign by sign.", StatusCodes.Status404NotFound);
        }

        if (copy.Withdrawn)
        {
            return PublicPages.Withdrawn();
        }

        var pattern = (await shelf.FindAsync(copy.Id, http.RequestAborted))!;
        return parsed!.Value != code
            ? Results.LocalRedirect("/c/" + parsed.Value)
            : new HtmlPage<CopyPage>(new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                [nameof(CopyPage.Pattern)] = pattern,
                [nameof(CopyPage.Code)] = parsed,
                [nameof(CopyPage.Number)] = copy.Number,
                [nameof(CopyPage.Newer)] = copy.Number < copy.Newest ? await reader.CompareAsync(copy.Id, copy.Number, copy.Newest, http.RequestAborted) : null,
            });
    }

    private static HtmlPage<CopyFormPage> Form(string typed, string wrong, int status) => new(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(CopyFormPage.Typed)] = typed,
            [nameof(CopyFormPage.Wrong)] = wrong,
        },
        status);
}
