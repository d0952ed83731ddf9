using System.Net;
using System.Net.Sockets;

namespace PatternShop.Web;

/// <summary>
/// Counts tries by where they come from: an IPv4 address, or an IPv6 /64 and the /48 around it. Whoever has one IPv6 address
/// has the whole /64, and often the 65,536 of a /48.
/// </summary>
/// <param name="time">The clock.</param>
/// <param name="most">Tries of an IPv4 address or a /64 in a window.</param>
/// <param name="window">The length of a window.</param>
internal sealed class NetworkThrottle(TimeProvider time, int most, TimeSpan window)
{
    /// <summary>A /48 has as many tries as so many of its networks.</summary>
    public const int NetworksInSite = 4;

    private const int NetworkBytes = 8;
    private const int SiteBytes = 6;
    private readonly Throttle _networks = new(time, most, window);
    private readonly Throttle _sites = new(time, most * NetworksInSite, window);

    /// <summary>Counts a try. Null when it may go on, else how long to wait.</summary>
    public TimeSpan? Wait(IPAddress? address) =>
        _networks.Wait(Prefix(address, NetworkBytes)) ?? (IsV6(address) ? _sites.Wait(Site(address)) : null);

    /// <summary>The IPv4 address, or the IPv6 /48: what one subscriber has at most as a rule.</summary>
    public static string Site(IPAddress? address) => Prefix(address, SiteBytes);

    private static bool IsV6(IPAddress? address) => address is { AddressFamily: AddressFamily.InterNetworkV6, IsIPv4MappedToIPv6: false };

    private static string Prefix(IPAddress? address, int bytes) => IsV6(address)
        ? new IPAddress([.. address!.GetAddressBytes().AsSpan(0, bytes), .. new byte[16 - bytes]]).ToString()
        : address?.MapToIPv4().ToString() ?? "";
}
