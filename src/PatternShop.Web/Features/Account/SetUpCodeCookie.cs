namespace PatternShop.Web;

/// <summary>Carries the set-up code from the address that the server printed to the page for setting up.</summary>
internal static class SetUpCodeCookie
{
    public const string Path = "/setup";
    private const string Name = "patternshop.setup";
    private static readonly TimeSpan Lasts = TimeSpan.FromHours(1);

    public static void Write(HttpContext http, string code)
    {
        http.Response.Headers.CacheControl = "no-store";
        http.Response.Cookies.Append(Name, code, Options(http, Lasts));
    }

    /// <summary>The code that the browser carries, or an empty text.</summary>
    public static string Read(HttpContext http) => http.Request.Cookies[Name] ?? "";

    public static void Delete(HttpContext http) => http.Response.Cookies.Delete(Name, Options(http, null));

    private static CookieOptions Options(HttpContext http, TimeSpan? lasts) =>
        new() { Path = "/", HttpOnly = true, SameSite = SameSiteMode.Lax, Secure = http.Request.IsHttps, MaxAge = lasts, IsEssential = true };
}
