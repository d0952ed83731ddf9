namespace PatternShop.Web;

/// <summary>Sends the browser on after a form: it fetches the next page, and going back does not send the form again.</summary>
internal sealed class SeeOther(string address) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
        httpContext.Response.Headers.Location = address;
        return Task.CompletedTask;
    }
}
