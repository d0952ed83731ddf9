using System.Net;
using System.Net.Sockets;

namespace PatternShop.Web;

/// <summary>How often passphrases and set-up codes may be tried, by who asks and by whom they say they are.</summary>
internal sealed class AccountThrottles(TimeProvider time)
{
    public const int Tries = 10;
    public static readonly TimeSpan Window = TimeSpan.FromMinutes(5);
    private readonly Throttle _addresses = new(time, Tries, Window);
    private readonly Throttle _makers = new(time, Tries, Window);

    /// <summary>Counts a try. Null when it may go on, else how long to wait.</summary>
    public TimeSpan? Wait(HttpContext http, string? email = null) =>
        _addresses.Wait(Network(http.Connection.RemoteIpAddress)) ?? (email is null ? null : _makers.Wait(email.Trim().ToLowerInvariant()));

    // Whoever has one IPv6 address has the 2^64 beside it.
    internal static string Network(IPAddress? address)
    {
        if (address is not { AddressFamily: AddressFamily.InterNetworkV6, IsIPv4MappedToIPv6: false })
        {
            return address?.MapToIPv4().ToString() ?? "";
        }

        return new IPAddress([.. address.GetAddressBytes().AsSpan(0, 8), .. new byte[8]]).ToString();
    }
}
