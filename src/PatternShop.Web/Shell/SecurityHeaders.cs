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
        // no other site learns from which page somebody came; an address that is a secret is not even told to ourselves
        headers["Referrer-Policy"] = context.GetEndpoint()?.Metadata.GetMetadata<PrivateAddress>() is null ? "same-origin" : "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
        return Task.CompletedTask;
    }
}

/// <summary>Says of an endpoint that whoever has its address may look: it must not leak.</summary>
internal sealed class PrivateAddress;

/// <summary>A Content-Security-Policy of its own for an endpoint.</summary>
internal sealed record PolicyMetadata(string Policy);
