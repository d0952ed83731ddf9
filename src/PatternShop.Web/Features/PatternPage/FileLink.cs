using System.Globalization;

namespace PatternShop.Web;

/// <summary>A file that readers can fetch.</summary>
/// <param name="Name">What it is, in words.</param>
/// <param name="Address">Where it is.</param>
/// <param name="MediaType">Its media type.</param>
/// <param name="Bytes">Its size.</param>
public sealed record FileLink(string Name, string Address, string MediaType, long Bytes)
{
    /// <summary>Its size in words; empty where it is not known before it is made.</summary>
    public string SizeText => Bytes == 0 ? "" : Bytes < 1_000_000
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, Bytes / 1000)} kB")
        : string.Create(CultureInfo.InvariantCulture, $"{Bytes / 1_000_000.0:0.0} MB");
}
