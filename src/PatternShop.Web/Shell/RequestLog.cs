namespace PatternShop.Web;

/// <summary>
/// Writes one line a request where its category is set to Debug; by default none. It names the route and never the address,
/// because the addresses of previews and of reports are secrets.
/// </summary>
internal sealed partial class RequestLog(RequestDelegate next, ILogger<RequestLog> log, TimeProvider time)
{
    public Task InvokeAsync(HttpContext context) => log.IsEnabled(LogLevel.Debug) ? WatchAsync(context) : next(context);

    /// <summary>The pattern of the route that a request took, such as /preview/{secret}.</summary>
    public static string Route(Endpoint? endpoint) => endpoint is RouteEndpoint { RoutePattern.RawText: { } pattern } ? pattern : "no route";

    private async Task WatchAsync(HttpContext context)
    {
        var (endpoint, began) = (context.GetEndpoint(), time.GetTimestamp());
        await next(context);
        LogRequest(log, context.Request.Method, Route(endpoint), context.Response.StatusCode, (long)time.GetElapsedTime(began).TotalMilliseconds);
    }

    [LoggerMessage(EventId = 1, EventName = "Request", Level = LogLevel.Debug, Message = "{Method} {Route} {Status} {Milliseconds} ms")]
    private static partial void LogRequest(ILogger log, string method, string route, int status, long milliseconds);
}
