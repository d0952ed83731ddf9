using System.Diagnostics;
using Microsoft.AspNetCore.Diagnostics;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Pages for what went wrong. A fault of ours carries an id that stands in the log beside the exception.</summary>
internal sealed partial class ErrorPages(ILogger<ErrorPages> log) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        // what was sent could not be taken: that is no fault of ours
        if (exception is BadHttpRequestException refused)
        {
            await Page(httpContext, refused.StatusCode, null).ExecuteAsync(httpContext);
            return true;
        }

        var id = Activity.Current?.TraceId.ToString() is { Length: > 0 } trace ? trace[..12] : httpContext.TraceIdentifier;
        var route = RequestLog.Route(httpContext.Features.Get<IExceptionHandlerFeature>()?.Endpoint);
        if (exception is StoreException unable)
        {
            // the disk or the data, not the program: one line says it all
            LogStoreFault(log, id, httpContext.Request.Method, route, unable.Message);
            var status = unable.Fault == StoreFault.Damaged ? StatusCodes.Status500InternalServerError : StatusCodes.Status503ServiceUnavailable;
            await Page(httpContext, status, id).ExecuteAsync(httpContext);
            return true;
        }

        LogFault(log, id, httpContext.Request.Method, route, exception);
        await Page(httpContext, StatusCodes.Status500InternalServerError, id).ExecuteAsync(httpContext);
        return true;
    }

    public static Task WriteStatus(StatusCodeContext context) =>
        Page(context.HttpContext, context.HttpContext.Response.StatusCode, null).ExecuteAsync(context.HttpContext);

    private static HtmlPage<ErrorPage> Page(HttpContext http, int status, string? id) => new(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(ErrorPage.Status)] = status,
            [nameof(ErrorPage.Id)] = id,
            [nameof(ErrorPage.Sent)] = !HttpMethods.IsGet(http.Request.Method) && !HttpMethods.IsHead(http.Request.Method),
        },
        status);

    [LoggerMessage(EventId = 3, EventName = "StoreFault", Level = LogLevel.Error, Message = "Fault {Id} at {Method} {Route}: {Words}")]
    private static partial void LogStoreFault(ILogger log, string id, string method, string route, string words);

    [LoggerMessage(EventId = 2, EventName = "Fault", Level = LogLevel.Error, Message = "Fault {Id} at {Method} {Route}")]
    private static partial void LogFault(ILogger log, string id, string method, string route, Exception exception);
}
