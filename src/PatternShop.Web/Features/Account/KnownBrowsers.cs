using System.Globalization;
using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>A browser where a maker has signed in before.</summary>
/// <param name="Maker">The maker. For others this browser is a stranger's.</param>
/// <param name="Id">Names the mark; every signing-in makes another.</param>
internal sealed record KnownBrowser(MakerId Maker, string Id);

/// <summary>
/// Marks browsers in which a maker has signed in, with a cookie that outlives the session. It opens nothing: it only keeps the
/// maker's tries apart from those of strangers.
/// </summary>
internal sealed class KnownBrowsers(IDataProtectionProvider protection, ShopAddress shop, TimeProvider time, RandomNumberGenerator random)
{
    /// <summary>As long as browsers keep a cookie at most.</summary>
    public static readonly TimeSpan Lasts = TimeSpan.FromDays(400);

    private const string Name = "patternshop.browser";

    // a browser takes a cookie of such a name from the site itself only, and only over TLS
    private const string HostName = "__Host-" + Name;
    private const int IdBytes = 16;
    private static readonly TimeSpan InvitationLasts = TimeSpan.FromHours(1);
    private readonly IDataProtector _marks = protection.CreateProtector("PatternShop.KnownBrowser");
    private readonly IDataProtector _invitations = protection.CreateProtector("PatternShop.KnownBrowser.Invitation");

    /// <summary>Marks the browser of a maker who has just signed in.</summary>
    public async Task MarkAsync(HttpContext http, MakerId maker)
    {
        var name = await NameAsync(http.RequestAborted);
        http.Response.Cookies.Append(name, Make(_marks, maker, Lasts), new CookieOptions
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Strict,
            Secure = name == HostName || http.Request.IsHttps,
            Path = "/",
            MaxAge = Lasts,
            IsEssential = true,
        });
    }

    /// <summary>The mark of the browser that asks; null when it has none that is still good.</summary>
    public async Task<KnownBrowser?> FindAsync(HttpContext http)
    {
        var cookies = http.Request.Cookies;
        return (cookies.ContainsKey(Name) || cookies.ContainsKey(HostName)) && cookies[await NameAsync(http.RequestAborted)] is { } mark ? Read(_marks, mark) : null;
    }

    /// <summary>A path that marks the browser in which it is opened within an hour, for the operator to hand out.</summary>
    public string Invite(MakerId maker) => $"{AccountEndpoints.SignInPath}?known={Make(_invitations, maker, InvitationLasts)}";

    /// <summary>The maker to whom an invitation was given; null when it is none, or is over.</summary>
    public MakerId? Invited(string invitation) => Read(_invitations, invitation)?.Maker;

    private string Make(IDataProtector protector, MakerId maker, TimeSpan lasts)
    {
        Span<byte> id = stackalloc byte[IdBytes];
        random.GetBytes(id);
        var until = (time.GetUtcNow() + lasts).ToUnixTimeSeconds();
        return protector.Protect(string.Create(CultureInfo.InvariantCulture, $"{maker.Value} {until} {Convert.ToHexStringLower(id)}"));
    }

    private KnownBrowser? Read(IDataProtector protector, string mark)
    {
        try
        {
            return protector.Unprotect(mark).Split(' ') is [var maker, var until, var id]
                && long.Parse(until, CultureInfo.InvariantCulture) > time.GetUtcNow().ToUnixTimeSeconds()
                ? new KnownBrowser(new MakerId(long.Parse(maker, CultureInfo.InvariantCulture)), id)
                : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    private async Task<string> NameAsync(CancellationToken cancellationToken) =>
        await shop.CurrentAsync(cancellationToken) is { } address && address.StartsWith("https://", StringComparison.Ordinal) ? HostName : Name;
}
