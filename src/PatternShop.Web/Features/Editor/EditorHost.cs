using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.SignalR;
using MudBlazor.Services;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Puts the editor, the one interactive page, into the server.</summary>
internal static class EditorHost
{
    // the component library writes styles into its elements, and the framework needs to know where the site begins
    private const string Policy =
        "default-src 'none'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; font-src 'self'; script-src 'self'; connect-src 'self'; "
        + "manifest-src 'self'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    // the longest notes (20,000 characters, each up to 6 bytes as it is sent) stand in a message twice; above the bound a circuit is closed
    private const int MostMessageBytes = 256 * 1024;

    public static void AddEditor(this IServiceCollection services)
    {
        services.AddRazorComponents().AddInteractiveServerComponents().AddHubOptions(options =>
        {
            options.MaximumReceiveMessageSize = MostMessageBytes;
            options.AddFilter<SessionFilter>();
        });
        services.AddMudServices();
        services.AddSingleton<OpenPatterns>();
        services.AddSingleton<WindowNames>();
    }

    public static void MapEditor(this IEndpointRouteBuilder routes) => routes.MapRazorComponents<App>()
        .AddInteractiveServerRenderMode(options => options.ContentSecurityFrameAncestorsPolicy = null)
        .RequireAuthorization()
        .DisableAntiforgery()
        .WithMetadata(new PolicyMetadata(Policy))
        .Add(AnswerOnlyForOwnPatterns);

    private static void AnswerOnlyForOwnPatterns(EndpointBuilder endpoint)
    {
        if (endpoint.RequestDelegate is { } page && endpoint.Metadata.OfType<ComponentTypeMetadata>().Any())
        {
            endpoint.RequestDelegate = async http =>
            {
                http.Response.Headers.CacheControl = "no-store";
                if (await IsOwnAsync(http))
                {
                    await page(http);
                }
                else
                {
                    http.Response.StatusCode = StatusCodes.Status404NotFound;
                }
            };
        }
    }

    private static async Task<bool> IsOwnAsync(HttpContext http) =>
        PatternId.TryParse(http.GetRouteValue(nameof(EditorPage.Id)) as string, out var id)
        && await http.RequestServices.GetRequiredService<Workroom>().OpenAsync(http.User.Maker(), id, http.RequestAborted) is not null;
}
