using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>How often passphrases and set-up codes may be tried.</summary>
/// <remarks>
/// Strangers' tries are counted by where they come from and by the e-mail address that they name. Once strangers have used up
/// the tries for an address, a place that has not tried it yet still has one, so that a few strangers cannot keep the maker out;
/// with hundreds of places they can, but only in browsers where the maker never signed in: others have tries of their own.
/// </remarks>
internal sealed class AccountThrottles(TimeProvider time)
{
    /// <summary>Tries from one place, in one known browser, and of all strangers for one e-mail address.</summary>
    public const int Tries = 10;

    /// <summary>How many places have one try more for an e-mail address.</summary>
    public const int MorePlaces = 100;

    public static readonly TimeSpan Window = TimeSpan.FromMinutes(5);
    private readonly NetworkThrottle _networks = new(time, Tries, Window);
    private readonly Throttle _makers = new(time, Tries, Window);
    private readonly Throttle _firstTries = new(time, 1, Window);
    private readonly Throttle _morePlaces = new(time, MorePlaces, Window);
    private readonly Throttle _browsers = new(time, Tries, Window);

    /// <summary>Counts a try of a set-up code. Null when it may go on, else how long to wait.</summary>
    public TimeSpan? Wait(HttpContext http) => _networks.Wait(http.Connection.RemoteIpAddress);

    /// <summary>Counts a stranger's try to sign in.</summary>
    public TimeSpan? Wait(HttpContext http, string email)
    {
        if (Wait(http) is { } wait)
        {
            return wait;
        }

        var maker = Key(email);
        var first = _firstTries.Wait($"{NetworkThrottle.Site(http.Connection.RemoteIpAddress)} {maker}");
        return _makers.Wait(maker) is null ? null : first ?? _morePlaces.Wait(maker);
    }

    /// <summary>Counts a try of the maker in a browser where they have signed in before.</summary>
    public TimeSpan? Wait(KnownBrowser browser) => _browsers.Wait(browser.Id);

    // no maker has a longer one, and what is remembered must stay small
    internal static string Key(string email) => email.Trim() is { Length: <= MakerRules.EmailMost } named ? named.ToLowerInvariant() : "";
}
