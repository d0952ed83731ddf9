namespace PatternShop.Web;

/// <summary>Headers that keep every answer to itself. A page that needs more than the strict policy says so on its endpoint.</summary>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    /// <summary>Nothing from anywhere else, nothing inline.</summary>
    public const string StrictPolicy =
        "default-src 'none'; img-src 'self' data:; style-src 'self'; font-src 'self'; script-src 'self'; connect-src 'self'; "
        + "manifest-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>For a year, this host alone: whoever runs a shop may have other hosts without TLS.</summary>
    public const string OnlyTls = "max-age=31536000";

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
        headers["Cross-Origin-Resource-Policy"] = context.GetEndpoint()?.Metadata.GetMetadata<ShownElsewhere>() is null ? "same-origin" : "cross-origin";
        // a machine's own name would be held to TLS for whatever else listens there
        if (context.Request.IsHttps && context.Request.Host.Host != "localhost")
        {
            headers.StrictTransportSecurity = OnlyTls;
        }

        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
        return Task.CompletedTask;
    }
}

/// <summary>Says of an endpoint that whoever has its address may look: it must not leak.</summary>
internal sealed class PrivateAddress;

/// <summary>Says of an endpoint that pages of other sites may show its picture.</summary>
internal sealed class ShownElsewhere;

/// <summary>A Content-Security-Policy of its own for an endpoint.</summary>
internal sealed record PolicyMetadata(string Policy);
