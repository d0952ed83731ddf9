using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Where readers find the shop: as the server's settings say, else as the operator's command has kept it.</summary>
internal sealed class ShopAddress(HostSettings settings, Makers makers)
{
    /// <summary>Without a slash at the end; null while nobody has said.</summary>
    public async Task<string?> CurrentAsync(CancellationToken cancellationToken) =>
        settings.PublicAddress ?? await makers.PublicAddressAsync(cancellationToken);
}
