using System.Text;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;

namespace PatternShop.Web;

/// <summary>
/// Answers with a whole static page made by a component: no circuit, no cookie, no script that it does not name, and
/// the status code that is meant.
/// </summary>
internal sealed class HtmlPage<TPage>(Dictionary<string, object?> parameters, int status = StatusCodes.Status200OK) : IResult
    where TPage : IComponent
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        await using var renderer = new HtmlRenderer(httpContext.RequestServices, httpContext.RequestServices.GetRequiredService<ILoggerFactory>());
        var html = await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<TPage>(ParameterView.FromDictionary(parameters))).ToHtmlString());
        httpContext.Response.StatusCode = status;
        httpContext.Response.ContentType = "text/html; charset=utf-8";
        if (string.IsNullOrEmpty(httpContext.Response.Headers.CacheControl))
        {
            httpContext.Response.Headers.CacheControl = "no-cache";
        }

        if (!HttpMethods.IsHead(httpContext.Request.Method))
        {
            await httpContext.Response.WriteAsync("<!DOCTYPE html>\n" + html, Encoding.UTF8, httpContext.RequestAborted);
        }
    }
}
