using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Sessions of makers: a cookie that is looked up again at every request.</summary>
internal static class MakerSession
{
    private static readonly TimeSpan Lasts = TimeSpan.FromDays(14);

    public static void AddMakerSession(this IServiceCollection services)
    {
        services.AddAuthentication(MakerPrincipal.Scheme).AddCookie(MakerPrincipal.Scheme, Configure);
        services.AddAuthorization();
    }

    public static Task BeginAsync(HttpContext http, Maker maker) =>
        http.SignInAsync(MakerPrincipal.Scheme, MakerPrincipal.Make(maker.Id, maker.Stamp), new AuthenticationProperties { IsPersistent = true });

    public static Task EndAsync(HttpContext http) => http.SignOutAsync(MakerPrincipal.Scheme);

    /// <summary>The maker of a request that came through the door; others never get that far.</summary>
    public static MakerId Maker(this ClaimsPrincipal principal) =>
        MakerPrincipal.Of(principal)?.Id ?? throw new InvalidOperationException("An endpoint for makers was reached without one.");

    /// <summary>The same with everything that is known about them.</summary>
    public static async Task<Maker> MakerAsync(this HttpContext http, Makers makers) =>
        await makers.FindAsync(http.User.Maker(), http.RequestAborted) ?? throw new InvalidOperationException("A session stands without its maker.");

    private static void Configure(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = "patternshop.maker";
        options.Cookie.HttpOnly = true;
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.Cookie.IsEssential = true;
        options.ExpireTimeSpan = Lasts;
        options.SlidingExpiration = true;
        options.Events.OnValidatePrincipal = Validate;
        options.Events.OnCheckSlidingExpiration = RenewAtTheBenchOnly;
        options.Events.OnRedirectToLogin = AskToSignIn;
    }

    private static async Task Validate(CookieValidatePrincipalContext context)
    {
        var makers = context.HttpContext.RequestServices.GetRequiredService<Makers>();
        if (context.Principal is not { } principal
            || MakerPrincipal.Of(principal) is not { } session
            || !await makers.IsCurrentAsync(session.Id, session.Stamp, context.HttpContext.RequestAborted))
        {
            context.RejectPrincipal();
        }
    }

    // Public pages set no cookie, whoever reads them.
    private static Task RenewAtTheBenchOnly(CookieSlidingExpirationContext context)
    {
        context.ShouldRenew &= context.HttpContext.GetEndpoint()?.Metadata.GetMetadata<IAuthorizeData>() is not null;
        return Task.CompletedTask;
    }

    private static Task AskToSignIn(RedirectContext<CookieAuthenticationOptions> context)
    {
        var request = context.Request;
        var back = HttpMethods.IsGet(request.Method) ? request.Path + request.QueryString : LocalAddress.Studio;
        context.Response.Redirect(AccountEndpoints.SignInThen(back));
        return Task.CompletedTask;
    }
}
