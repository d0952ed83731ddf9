using System.Globalization;
using System.Net;
using System.Net.Sockets;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>
/// Logs what an operator wants to be able to look up later. People are named by their maker id or, before they have signed in, by the network
/// that they came from, cut short; nothing that anybody typed is logged.
/// </summary>
internal sealed partial class ShopEvents(ILogger<ShopEvents> log, TimeProvider time)
{
    private const int NamedBytes4 = 3;
    private const int NamedBytes6 = 6;

    // a crowd that is turned away must not fill the disk: a line a network and window
    private readonly Throttle _throttled = new(time, 1, AccountThrottles.Window);

    public void SetUp(MakerId maker) => LogSetUp(log, maker.Value);

    public void SignedIn(MakerId maker) => LogSignedIn(log, maker.Value);

    public void SignedOut(MakerId maker) => LogSignedOut(log, maker.Value);

    public void SignInFailed(HttpContext http) => LogSignInFailed(log, Network(http.Connection.RemoteIpAddress));

    public void SignInThrottled(HttpContext http)
    {
        var network = Network(http.Connection.RemoteIpAddress);
        if (_throttled.Wait(network) is null)
        {
            LogSignInThrottled(log, network);
        }
    }

    /// <summary>Somebody found the queue for passphrases full.</summary>
    public void SignInBusy()
    {
        if (_throttled.Wait("") is null)
        {
            LogSignInBusy(log);
        }
    }

    public void Published(MakerId maker, PatternId pattern, int version) => LogPublished(log, maker.Value, pattern, version);

    public void Withdrawn(MakerId maker, PatternId pattern) => LogWithdrawn(log, maker.Value, pattern);

    public void Restored(MakerId maker, PatternId pattern) => LogRestored(log, maker.Value, pattern);

    public void Deleted(MakerId maker, PatternId pattern) => LogDeleted(log, maker.Value, pattern);

    public void BroughtBack(MakerId maker, PatternId pattern) => LogBroughtBack(log, maker.Value, pattern);

    public void PreviewBegan(MakerId maker, PatternId pattern) => LogPreviewBegan(log, maker.Value, pattern);

    public void PreviewEnded(MakerId maker, PatternId pattern) => LogPreviewEnded(log, maker.Value, pattern);

    /// <summary>The network of an address: 203.0.113.0/24 or 2001:db8:1::/48.</summary>
    internal static string Network(IPAddress? address)
    {
        if (address is null)
        {
            return "unknown";
        }

        var plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        var bytes = plain.GetAddressBytes();
        var named = plain.AddressFamily == AddressFamily.InterNetwork ? NamedBytes4 : NamedBytes6;
        bytes.AsSpan(named).Clear();
        return string.Create(CultureInfo.InvariantCulture, $"{new IPAddress(bytes)}/{named * 8}");
    }

    [LoggerMessage(EventId = 100, EventName = nameof(SetUp), Level = LogLevel.Information, Message = "Maker {Maker} set up the shop")]
    private static partial void LogSetUp(ILogger log, long maker);

    [LoggerMessage(EventId = 101, EventName = nameof(SignedIn), Level = LogLevel.Information, Message = "Maker {Maker} signed in")]
    private static partial void LogSignedIn(ILogger log, long maker);

    [LoggerMessage(EventId = 102, EventName = nameof(SignedOut), Level = LogLevel.Information, Message = "Maker {Maker} signed out everywhere")]
    private static partial void LogSignedOut(ILogger log, long maker);

    [LoggerMessage(EventId = 103, EventName = nameof(SignInFailed), Level = LogLevel.Warning, Message = "A sign-in from {Network} failed")]
    private static partial void LogSignInFailed(ILogger log, string network);

    [LoggerMessage(EventId = 104, EventName = nameof(SignInThrottled), Level = LogLevel.Warning, Message = "Too many sign-ins from {Network} or for one account: some were turned away")]
    private static partial void LogSignInThrottled(ILogger log, string network);

    [LoggerMessage(EventId = 105, EventName = nameof(SignInBusy), Level = LogLevel.Warning, Message = "So many sign-ins came at once that some were turned away")]
    private static partial void LogSignInBusy(ILogger log);

    [LoggerMessage(EventId = 200, EventName = nameof(Published), Level = LogLevel.Information, Message = "Maker {Maker} published version {Version} of pattern {Pattern}")]
    private static partial void LogPublished(ILogger log, long maker, PatternId pattern, int version);

    [LoggerMessage(EventId = 201, EventName = nameof(Withdrawn), Level = LogLevel.Information, Message = "Maker {Maker} withdrew pattern {Pattern}")]
    private static partial void LogWithdrawn(ILogger log, long maker, PatternId pattern);

    [LoggerMessage(EventId = 202, EventName = nameof(Restored), Level = LogLevel.Information, Message = "Maker {Maker} put pattern {Pattern} back in the shop")]
    private static partial void LogRestored(ILogger log, long maker, PatternId pattern);

    [LoggerMessage(EventId = 203, EventName = nameof(Deleted), Level = LogLevel.Information, Message = "Maker {Maker} deleted pattern {Pattern}")]
    private static partial void LogDeleted(ILogger log, long maker, PatternId pattern);

    [LoggerMessage(EventId = 204, EventName = nameof(BroughtBack), Level = LogLevel.Information, Message = "Maker {Maker} brought back pattern {Pattern}")]
    private static partial void LogBroughtBack(ILogger log, long maker, PatternId pattern);

    [LoggerMessage(EventId = 205, EventName = nameof(PreviewBegan), Level = LogLevel.Information, Message = "Maker {Maker} began a preview of pattern {Pattern}")]
    private static partial void LogPreviewBegan(ILogger log, long maker, PatternId pattern);

    [LoggerMessage(EventId = 206, EventName = nameof(PreviewEnded), Level = LogLevel.Information, Message = "Maker {Maker} ended the preview of pattern {Pattern}")]
    private static partial void LogPreviewEnded(ILogger log, long maker, PatternId pattern);
}
