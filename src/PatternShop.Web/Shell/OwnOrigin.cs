namespace PatternShop.Web;

/// <summary>
/// Keeps pages of other sites away from the workbench's connection: a browser sends the maker's cookie with a websocket that any page opens, and
/// only the Origin header tells which page it was.
/// </summary>
internal sealed class OwnOrigin(RequestDelegate next, ShopAddress shop)
{
    private const string Circuit = "/_blazor";

    public async Task InvokeAsync(HttpContext context)
    {
        if (context.Request.Path.StartsWithSegments(Circuit, StringComparison.OrdinalIgnoreCase) && !await IsOwnAsync(context))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return;
        }

        await next(context);
    }

    private async Task<bool> IsOwnAsync(HttpContext context)
    {
        string? origin = context.Request.Headers.Origin;
        if (string.IsNullOrEmpty(origin))
        {
            return !IsWebSocket(context);
        }

        if (!Uri.TryCreate(origin, UriKind.Absolute, out var from) || from.Scheme is not ("http" or "https"))
        {
            return false;
        }

        return Is(from, context.Request.Host) || (await shop.CurrentAsync(context.RequestAborted) is { } address && Is(from, new HostString(new Uri(address).Authority)));
    }

    // the scheme is not compared: behind a proxy that is not known, the server does not see that the browser came over TLS
    private static bool Is(Uri origin, HostString host) => string.Equals(origin.Authority, host.Value, StringComparison.OrdinalIgnoreCase);

    private static bool IsWebSocket(HttpContext context) => context.WebSockets.IsWebSocketRequest || context.Request.Headers.Upgrade.Count > 0;
}
