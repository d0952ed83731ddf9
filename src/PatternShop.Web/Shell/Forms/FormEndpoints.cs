using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.Metadata;

namespace PatternShop.Web;

/// <summary>Maps pages and the forms on them.</summary>
internal static class FormEndpoints
{
    /// <summary>Bytes of a form without files.</summary>
    public const long Small = 64 * 1024;

    private static readonly string[] Reading = [HttpMethods.Get, HttpMethods.Head];

    /// <summary>A page that is fetched.</summary>
    public static RouteHandlerBuilder MapPage(this IEndpointRouteBuilder routes, string pattern, Delegate handler) =>
        routes.MapMethods(pattern, Reading, handler);

    /// <summary>A form that is sent: only small ones, and only from a page of ours.</summary>
    /// <param name="routes">Where it is mapped.</param>
    /// <param name="pattern">Its address.</param>
    /// <param name="handler">What takes it.</param>
    /// <param name="most">Bytes of the largest that is taken.</param>
    public static RouteHandlerBuilder MapForm(this IEndpointRouteBuilder routes, string pattern, Delegate handler, long most = Small) =>
        routes.MapPost(pattern, handler).WithMetadata(new FormSize(most)).AddEndpointFilter(OnlyOwnForms);

    private static async ValueTask<object?> OnlyOwnForms(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var http = context.HttpContext;
        try
        {
            return http.Request.HasFormContentType && await http.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(http)
                ? await next(context)
                : Results.StatusCode(StatusCodes.Status400BadRequest);
        }
        catch (AntiforgeryValidationException failure)
        {
            return Results.StatusCode(failure.InnerException is BadHttpRequestException refused ? refused.StatusCode : StatusCodes.Status400BadRequest);
        }
    }

    private sealed class FormSize(long most) : IRequestSizeLimitMetadata
    {
        public long? MaxRequestBodySize => most;
    }
}
