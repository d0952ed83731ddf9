using System.Net;

namespace PatternShop.Web;

/// <summary>What whoever runs the server decides, read from the configuration section "PatternShop".</summary>
/// <param name="DataFolder">Where everything that must be kept lies.</param>
/// <param name="PublicAddress">Where readers find the shop, without a slash at the end; null leaves it to the store.</param>
/// <param name="KnownProxies">The networks whose word about the reader's address and scheme is taken.</param>
internal sealed record HostSettings(string DataFolder, string? PublicAddress, IReadOnlyList<IPNetwork> KnownProxies)
{
    private const string Section = "PatternShop:";

    /// <summary>Reads the settings, or says in words what is wrong with them.</summary>
    public static HostSettings? Read(IConfiguration configuration, string contentRoot, out string? problem)
    {
        var folder = Path.GetFullPath(configuration[Section + nameof(DataFolder)] is { Length: > 0 } named ? named : "data", contentRoot);
        var typed = configuration[Section + nameof(PublicAddress)];
        var address = "";
        if (!string.IsNullOrEmpty(typed) && Store.PublicAddress.Read(typed, out address) is { } wrong)
        {
            problem = $"The setting {Section}{nameof(PublicAddress)} is \"{typed}\". {wrong.What} {wrong.Remedy}";
            return null;
        }

        var proxies = Listed(configuration.GetSection(Section + nameof(KnownProxies))).Select(text => (text, network: Network(text))).ToList();
        if (proxies.Find(proxy => proxy.network is null).text is { } unknown)
        {
            problem = $"The setting {Section}{nameof(KnownProxies)} holds \"{unknown}\", which is neither an address nor a network. Write 10.0.0.7 or 10.0.0.0/24; several are parted by commas.";
            return null;
        }

        problem = null;
        return new HostSettings(folder, address is { Length: > 0 } ? address : null, [.. proxies.Select(proxy => proxy.network!.Value)]);
    }

    // One text with commas (as in an environment variable) or a list (as in a file).
    private static IEnumerable<string> Listed(IConfigurationSection section) =>
        section.GetChildren().Select(child => child.Value).Append(section.Value)
            .SelectMany(text => (text ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));

    private static IPNetwork? Network(string text) =>
        IPAddress.TryParse(text, out var address) ? new IPNetwork(address, address.GetAddressBytes().Length * 8)
        : IPNetwork.TryParse(text, out var network) ? network
        : null;
}
