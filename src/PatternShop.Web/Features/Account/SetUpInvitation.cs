using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Tells whoever started the server where its first maker comes in. Only they see it: behind a proxy every reader looks local.</summary>
internal sealed partial class SetUpInvitation(Makers makers, ShopAddress shop, ILogger<SetUpInvitation> log)
{
    public async Task SayAsync(IEnumerable<string> listening)
    {
        if (await makers.SetUpCodeAsync() is { } code)
        {
            var shopAddress = await shop.CurrentAsync(CancellationToken.None) ?? Reachable(listening.FirstOrDefault() ?? "http://localhost");
            LogInvitation(log, $"{shopAddress.TrimEnd('/')}/setup?code={code}");
        }
    }

    // A server that listens everywhere is reached from its own machine by this name.
    private static string Reachable(string listening)
    {
        var address = new UriBuilder(listening.Replace("://+", "://localhost", StringComparison.Ordinal).Replace("://*", "://localhost", StringComparison.Ordinal));
        address.Host = address.Host is "0.0.0.0" or "[::]" ? "localhost" : address.Host;
        return address.Uri.GetLeftPart(UriPartial.Authority);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "This shop has no maker yet. Set it up once, at {Address}")]
    private static partial void LogInvitation(ILogger log, string address);
}
