namespace PatternShop.Web;

/// <summary>Headers that keep every answer to itself. A page that needs more than the strict policy says so on its endpoint.</summary>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    /// <summary>Nothing from anywhere else, nothing inline.</summary>
    public const string StrictPolicy =
        "default-src 'none'; img-src 'self' data:; style-src 'self'; font-src 'self'; script-src 'self'; connect-src 'self'; "
        + "manifest-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    public Task InvokeAsync(HttpContext context)
    {
        // as the answer starts, since the page of a fault begins with headers cleared
        context.Response.OnStarting(Add, context);
        return next(context);
    }

    private static Task Add(object state)
    {
        var context = (HttpContext)state;
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = context.GetEndpoint()?.Metadata.GetMetadata<PolicyMetadata>()?.Policy ?? StrictPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "strict-origin-when-cross-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
        return Task.CompletedTask;
    }
}

/// <summary>A Content-Security-Policy of its own for an endpoint.</summary>
internal sealed record PolicyMetadata(string Policy);
