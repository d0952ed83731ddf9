using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.Extensions.Options;

namespace PatternShop.Web;

/// <summary>
/// Compresses what everybody may see, over TLS too. What must not be kept is sent as it is: it holds a form's token, a maker's things or a
/// private address, and the length of a compressed answer would tell about a secret beside words that somebody else chose.
/// </summary>
internal sealed class OpenCompression(IServiceProvider services, IOptions<ResponseCompressionOptions> options) : ResponseCompressionProvider(services, options)
{
    public override bool ShouldCompressResponse(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Response.GetTypedHeaders().CacheControl is not { NoStore: true } && base.ShouldCompressResponse(context);
    }
}
