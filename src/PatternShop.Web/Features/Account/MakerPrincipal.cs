using System.Globalization;
using System.Security.Claims;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Who is signed in, as the cookie and the circuit carry it: the maker and the stamp that was theirs when they signed in.</summary>
internal static class MakerPrincipal
{
    public const string Scheme = "maker";
    private const string StampClaim = "stamp";

    public static ClaimsPrincipal Make(MakerId id, string stamp) => new(new ClaimsIdentity(
        [
            new Claim(ClaimTypes.NameIdentifier, id.Value.ToString(CultureInfo.InvariantCulture)),
            new Claim(StampClaim, stamp),
        ],
        Scheme));

    /// <summary>The maker and the stamp; null when nobody is signed in. Whether the stamp still stands only <see cref="OpenSessions.IsCurrentAsync"/> knows.</summary>
    public static (MakerId Id, string Stamp)? Of(ClaimsPrincipal? principal)
    {
        var id = principal?.FindFirstValue(ClaimTypes.NameIdentifier);
        return principal?.Identity is { IsAuthenticated: true, AuthenticationType: Scheme }
            && long.TryParse(id, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && principal.FindFirstValue(StampClaim) is { Length: > 0 } stamp
            ? (new MakerId(number), stamp)
            : null;
    }
}
