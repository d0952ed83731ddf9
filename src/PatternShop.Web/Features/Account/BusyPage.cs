using System.Globalization;

namespace PatternShop.Web;

/// <summary>Turns away whoever finds the queue for passphrases full. The page is made once: turning a crowd away must cost next to nothing.</summary>
internal sealed class BusyPage(IServiceProvider services) : IResult
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(5);
    private readonly Lazy<Task<byte[]>> _bytes = new(() => NoticePage.Of(
        StatusCodes.Status429TooManyRequests, "Signing in is busy right now", "Wait a few seconds, then try again.", "Try again", AccountEndpoints.SignInPath).RenderAsync(services));

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        response.StatusCode = StatusCodes.Status429TooManyRequests;
        response.ContentType = "text/html; charset=utf-8";
        response.Headers.CacheControl = "no-store";
        response.Headers.RetryAfter = Pause.TotalSeconds.ToString(CultureInfo.InvariantCulture);
        await response.Body.WriteAsync(await _bytes.Value, httpContext.RequestAborted);
    }
}
