using Microsoft.Extensions.Primitives;

namespace PatternShop.Web;

/// <summary>
/// Gives every cookie of ours the prefix "__Host-" and Secure where the browser talks to the shop over TLS, and takes no cookie without the prefix
/// there: a browser lets neither another host of the same domain nor a connection without TLS set one of that name. The rest of the program
/// knows the plain names only.
/// </summary>
internal sealed class HostCookies(RequestDelegate next, ShopAddress shop)
{
    private const string Ours = "patternshop.";
    private const string Prefix = "__Host-";

    public async Task InvokeAsync(HttpContext context)
    {
        context.Response.OnStarting(() => MarkAsync(context));
        if (Parts(context).Any(part => IsOurs(part) || IsOurs(Plain(part))) && await IsOverTlsAsync(context))
        {
            context.Request.Headers.Cookie = string.Join("; ", Parts(context).Where(part => !IsOurs(part)).SelectMany(part => IsOurs(Plain(part)) ? [part, Plain(part)] : new[] { part }));
        }

        await next(context);
    }

    private async Task MarkAsync(HttpContext context)
    {
        var set = context.Response.Headers.SetCookie;
        if (set.Any(cookie => IsOurs(cookie!)) && await IsOverTlsAsync(context))
        {
            context.Response.Headers.SetCookie = new StringValues([.. set.Select(cookie => IsOurs(cookie!) ? Marked(cookie!) : cookie)]);
        }
    }

    // a proxy that is not known cannot say that the browser came over TLS, but the shop's own address can
    private async Task<bool> IsOverTlsAsync(HttpContext context) =>
        context.Request.IsHttps
        || (await shop.CurrentAsync(context.RequestAborted) is { } address && new Uri(address) is { Scheme: "https" } own && new HostString(own.Authority) == context.Request.Host);

    private static IEnumerable<string> Parts(HttpContext context) =>
        context.Request.Headers.Cookie.SelectMany(line => (line ?? "").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));

    private static bool IsOurs(string cookie) => cookie.StartsWith(Ours, StringComparison.Ordinal);

    private static string Plain(string cookie) => cookie.StartsWith(Prefix, StringComparison.Ordinal) ? cookie[Prefix.Length..] : "";

    private static string Marked(string cookie) => Prefix + cookie + (cookie.Contains("; secure", StringComparison.OrdinalIgnoreCase) ? "" : "; secure");
}
