namespace PatternShop.Web;

/// <summary>
/// How the server ends: soon, whoever has a page open. What is being answered gets a few seconds more; whoever comes now is sent away, because a workbench that
/// connects again would otherwise hold the server until its time is over.
/// </summary>
internal static class Stopping
{
    /// <summary>For answers that are under way. With what comes after it the end takes less than five seconds.</summary>
    public static readonly TimeSpan Grace = TimeSpan.FromSeconds(3);

    public static void AddStopping(this IServiceCollection services) => services.Configure<HostOptions>(options =>
    {
        options.ShutdownTimeout = Grace;
        options.ServicesStopConcurrently = true;
        // a failing task in the background says so in the log; readers go on reading
        options.BackgroundServiceExceptionBehavior = BackgroundServiceExceptionBehavior.Ignore;
    });

    /// <summary>Answers 503 to whatever comes after the end has begun, but for the two addresses that say how the server is.</summary>
    public static void UseStopping(this WebApplication app)
    {
        var lifetime = app.Lifetime;
        app.Use((http, next) =>
        {
            if (!lifetime.ApplicationStopping.IsCancellationRequested || http.Request.Path.Value is Health.Alive or Health.Ready)
            {
                return next(http);
            }

            http.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            http.Response.Headers.Connection = "close";
            http.Response.Headers.RetryAfter = "10";
            return Task.CompletedTask;
        });
    }
}
