using System.Diagnostics;
using Microsoft.AspNetCore.Diagnostics;

namespace PatternShop.Web;

/// <summary>Pages for what went wrong. A fault of ours carries an id that stands in the log beside the exception.</summary>
internal sealed partial class ErrorPages(ILogger<ErrorPages> log) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        // what was sent could not be taken: that is no fault of ours
        if (exception is BadHttpRequestException refused)
        {
            await Page(refused.StatusCode, null).ExecuteAsync(httpContext);
            return true;
        }

        var id = Activity.Current?.TraceId.ToString() is { Length: > 0 } trace ? trace[..12] : httpContext.TraceIdentifier;
        LogFault(log, id, httpContext.Request.Method, RequestLog.Route(httpContext.Features.Get<IExceptionHandlerFeature>()?.Endpoint), exception);
        await Page(StatusCodes.Status500InternalServerError, id).ExecuteAsync(httpContext);
        return true;
    }

    public static Task WriteStatus(StatusCodeContext context) =>
        Page(context.HttpContext.Response.StatusCode, null).ExecuteAsync(context.HttpContext);

    private static HtmlPage<ErrorPage> Page(int status, string? id) => new(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(ErrorPage.Status)] = status,
            [nameof(ErrorPage.Id)] = id,
        },
        status);

    [LoggerMessage(EventId = 2, EventName = "Fault", Level = LogLevel.Error, Message = "Fault {Id} at {Method} {Route}")]
    private static partial void LogFault(ILogger log, string id, string method, string route, Exception exception);
}
