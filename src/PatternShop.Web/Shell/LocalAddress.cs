namespace PatternShop.Web;

/// <summary>Keeps people on this server: an address that somebody else wrote into a link is followed only when it stays here.</summary>
internal static class LocalAddress
{
    public const string Studio = "/studio";

    /// <summary>The address if it is a path on this server, else my patterns.</summary>
    public static string OrStudio(string? address) => IsLocal(address) ? address! : Studio;

    // what our own pages send is escaped; other characters cannot stand in a header
    public static bool IsLocal(string? address) =>
        address is ['/', ..] and not ['/', '/' or '\\', ..] && !address.AsSpan().ContainsAnyExceptInRange('!', '~') && !address.Contains('\\', StringComparison.Ordinal);
}
