using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Net.Http.Headers;

namespace PatternShop.Web;

/// <summary>
/// Answers with a whole static page made by a component: no circuit, no cookie, no script that it does not name, and
/// the status code that is meant. A page without secrets carries a tag of its content, and is not sent to who has it.
/// </summary>
internal sealed class HtmlPage<TPage>(Dictionary<string, object?> parameters, int status = StatusCodes.Status200OK) : IResult
    where TPage : IComponent
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var bytes = await RenderAsync(httpContext.RequestServices);
        httpContext.Response.StatusCode = status;
        httpContext.Response.ContentType = "text/html; charset=utf-8";
        // whatever shows a maker's own things, or carries a form's token, has said by now that it must not be kept
        if (string.IsNullOrEmpty(httpContext.Response.Headers.CacheControl))
        {
            httpContext.Response.Headers.CacheControl = "no-cache";
            if (status == StatusCodes.Status200OK && IsKnown(httpContext, bytes))
            {
                httpContext.Response.StatusCode = StatusCodes.Status304NotModified;
                return;
            }
        }

        if (!HttpMethods.IsHead(httpContext.Request.Method))
        {
            await httpContext.Response.Body.WriteAsync(bytes, httpContext.RequestAborted);
        }
    }

    /// <summary>The bytes of the page.</summary>
    public async Task<byte[]> RenderAsync(IServiceProvider services)
    {
        await using var renderer = new HtmlRenderer(services, services.GetRequiredService<ILoggerFactory>());
        var html = await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<TPage>(ParameterView.FromDictionary(parameters))).ToHtmlString());
        return Encoding.UTF8.GetBytes("<!DOCTYPE html>\n" + html);
    }

    // weak, since the same page is sent compressed and plain
    private static bool IsKnown(HttpContext httpContext, byte[] bytes)
    {
        var tag = new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, 16))}\"", isWeak: true);
        httpContext.Response.GetTypedHeaders().ETag = tag;
        return httpContext.Request.GetTypedHeaders().IfNoneMatch.Any(known => known.Compare(tag, useStrongComparison: false));
    }
}
