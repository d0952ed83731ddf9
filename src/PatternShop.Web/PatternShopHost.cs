namespace PatternShop.Web;

/// <summary>The composition root: what the server is made of and in which order a request passes through it.</summary>
internal static class PatternShopHost
{
    public static async Task<int> RunAsync(string[] args)
    {
        var app = Build(args);
        await app.RunAsync();
        return 0;
    }

    public static WebApplication Build(string[] args)
    {
        var builder = WebApplication.CreateBuilder(args);
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.AddServerHeader = false);
        builder.Services.AddRazorComponents();
        builder.Services.AddHealthChecks();
        builder.Services.AddResponseCompression(options => options.MimeTypes = ["text/html", "image/svg+xml"]);
        builder.Services.AddExceptionHandler<ErrorPages>();
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddSingleton(PatternShop.Weave.Wording.English);
        builder.Services.AddSingleton<SampleShelf>();
        builder.Services.AddSingleton<PieceFiles>();

        var app = builder.Build();
        app.UseExceptionHandler(static _ => { });
        app.UseStatusCodePages(ErrorPages.WriteStatus);
        app.UseMiddleware<SecurityHeaders>();
        app.UseResponseCompression();
        app.MapStaticAssets();
        app.MapHealthChecks("/healthz");
        app.MapSamples();
        return app;
    }
}
