using System.IO.Compression;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.AspNetCore.ResponseCompression;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>The composition root: what the server is made of and in which order a request passes through it.</summary>
internal static class PatternShopHost
{
    private const int Stopped = 0;
    private const int CannotStart = 1;
    private const int BadSetting = 2;

    public static async Task<int> RunAsync(string[] args, TextWriter errors)
    {
        var builder = Builder(args);
        if (HostSettings.Read(builder.Configuration, builder.Environment.ContentRootPath, out var problem) is not { } settings)
        {
            await errors.WriteLineAsync(problem);
            return BadSetting;
        }

        await using var app = Build(builder, settings);
        try
        {
            await StartAsync(app);
        }
        catch (StoreException failure)
        {
            await errors.WriteLineAsync($"{settings.DataFolder}: {failure.Message}");
            return CannotStart;
        }
        catch (IOException failure)
        {
            await errors.WriteLineAsync($"The server can't listen at the address that --urls names. Stop what listens there, or name another. ({failure.Message})");
            return CannotStart;
        }

        await app.WaitForShutdownAsync();
        return Stopped;
    }

    public static WebApplicationBuilder Builder(string[] args)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = args,
            ApplicationName = typeof(PatternShopHost).Assembly.GetName().Name,
            ContentRootPath = ContentRoot.Of(AppContext.BaseDirectory),
        });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            ConnectionLimits.Apply(kestrel.Limits);
        });
        builder.Configuration.AddLogDefaults();
        return builder;
    }

    public static WebApplication Build(WebApplicationBuilder builder, HostSettings settings)
    {
        AddPages(builder.Services);
        AddKeeping(builder.Services, settings);
        builder.Services.AddMakerSession();
        builder.Services.AddAccount();
        builder.Services.AddPublicPages();
        builder.Services.AddSingleton<CorrectionsSoFar>();
        builder.Services.AddSingleton<Issuer>();
        builder.Services.AddSingleton<IssueTools>();
        builder.Services.AddSingleton<ReportThrottle>();
        builder.Services.AddSingleton<PhotoTools>();
        builder.Services.AddSingleton<PhotoRoom>();
        builder.Services.AddSingleton<DailySweep>();
        builder.Services.AddHostedService(static all => all.GetRequiredService<DailySweep>());
        var app = builder.Build();
        UsePipeline(app, settings);
        MapEndpoints(app);
        return app;
    }

    /// <summary>Opens the store, listens, and says how to set up if that is still to be done.</summary>
    public static async Task StartAsync(WebApplication app)
    {
        await app.Services.GetRequiredService<StoreStart>().ServeAsync();
        await app.Services.GetRequiredService<DailySweep>().SweepAsync(CancellationToken.None);
        await app.StartAsync();
        await app.Services.GetRequiredService<SetUpInvitation>().SayAsync(app.Urls);
    }

    private static void AddPages(IServiceCollection services)
    {
        services.AddEditor();
        services.AddHttpContextAccessor();
        services.AddHealth();
        services.AddStopping();
        services.AddSingleton<IResponseCompressionProvider, OpenCompression>();
        services.AddResponseCompression(options => (options.EnableForHttps, options.MimeTypes) = (true, ["text/html", "text/plain", "image/svg+xml", "application/json"]));
        services.Configure<BrotliCompressionProviderOptions>(options => options.Level = CompressionLevel.Optimal);
        services.AddExceptionHandler<ErrorPages>();
        services.AddSingleton<ShopEvents>();
        services.AddAntiforgery(options =>
        {
            options.Cookie.Name = "patternshop.form";
            options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        services.AddSingleton(Weave.Wording.English);
        services.AddSingleton<SampleShelf>();
        services.AddSingleton<PieceFiles>();
    }

    private static void AddKeeping(IServiceCollection services, HostSettings settings)
    {
        services.AddAccountStore(settings);
        services.Configure<ForwardedHeadersOptions>(options =>
        {
            options.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto;
            options.ForwardLimit = null;
            options.KnownProxies.Clear();
            options.KnownIPNetworks.Clear();
            settings.KnownProxies.ToList().ForEach(options.KnownIPNetworks.Add);
        });
    }

    private static void UsePipeline(WebApplication app, HostSettings settings)
    {
        if (settings.KnownProxies.Count > 0)
        {
            app.UseForwardedHeaders();
        }

        app.UseMiddleware<RequestLog>();
        app.UseExceptionHandler(static _ => { });
        app.UseStatusCodePages(ErrorPages.WriteStatus);
        app.UseMiddleware<SecurityHeaders>();
        app.UseStopping();
        app.UseMiddleware<OwnOrigin>();
        app.UseMiddleware<HostCookies>();
        app.UseResponseCompression();
        app.UseAuthentication();
        app.UseAuthorization();
    }

    private static void MapEndpoints(WebApplication app)
    {
        var open = app.MapGroup("").AllowAnonymous();
        open.MapStaticAssets();
        open.MapHealth();
        open.MapSamples();
        open.MapPublicPages();
        open.MapChanges();
        open.MapCopies();
        open.MapPreviews();
        open.MapReports();
        open.MapWeaveAlong();
        open.MapAccount();
        var studio = app.MapGroup("/studio").RequireAuthorization().AddEndpointFilter(NeverKept);
        studio.MapMyPatterns();
        studio.MapCloth();
        studio.MapIssuing();
        studio.MapPreviewing();
        studio.MapReportDesk();
        studio.MapPhotos();
        app.MapEditor();
    }

    private static ValueTask<object?> NeverKept(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        context.HttpContext.Response.Headers.CacheControl = "no-store";
        return next(context);
    }
}
