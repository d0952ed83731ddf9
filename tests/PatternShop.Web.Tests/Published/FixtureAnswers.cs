using System.Globalization;
using System.Net;
using PatternShop.Weave;

namespace PatternShop.Web.Tests;

/// <summary>
/// Compares answers of the present program with those of the earlier one. An address keeps its status for ever. It may redirect once, for good; a redirect that the
/// earlier program answered may stay as it was. Published files keep their bytes.
/// </summary>
internal static class FixtureAnswers
{
    /// <summary>Returns what differs, a line an address; empty when nothing does.</summary>
    public static async Task<IReadOnlyList<string>> DifferencesAsync(FixtureShop shop, IEnumerable<FixtureAddress> addresses)
    {
        var differences = new List<string>();
        // many addresses redirect to the same page: each is fetched once
        var replies = new Dictionary<(int?, string), Reply>();
        foreach (var address in addresses)
        {
            if (await DifferenceAsync(path => GetAsync(address.Maker, path), address, Target(address)) is { } difference)
            {
                differences.Add($"{address.Path}: {difference}");
            }
        }

        return differences;

        async Task<Reply> GetAsync(int? maker, string path) =>
            replies.TryGetValue((maker, path), out var reply) ? reply : replies[(maker, path)] = await shop.Visitor(maker).GetAsync(path);
    }

    /// <summary>The address itself, or the one to which the earlier program redirected from it.</summary>
    private static FixtureAddress Target(FixtureAddress address) =>
        address.Location is null ? address : FixtureShop.Manifest.Addresses.Single(other => other.Path == address.Location);

    private static async Task<string?> DifferenceAsync(Func<string, Task<Reply>> get, FixtureAddress address, FixtureAddress target)
    {
        var reply = await get(address.Path);
        if (reply.Location is { } location)
        {
            if (reply.Status != HttpStatusCode.MovedPermanently && (int)reply.Status != address.Status)
            {
                return Text($"redirects with {(int)reply.Status}");
            }

            reply = await get(location);
        }

        return (int)reply.Status != target.Status ? Text($"answered {target.Status}, now {(int)reply.Status}")
            : reply.Status == HttpStatusCode.OK ? Difference(reply, target)
            : null;
    }

    private static string? Difference(Reply reply, FixtureAddress target)
    {
        var type = reply.Headers.GetValueOrDefault("Content-Type");
        if (target.Sha256 is null)
        {
            return target.Type is null || MediaType(type) == MediaType(target.Type) ? null : $"was {target.Type}, now {type}";
        }

        return type != target.Type ? $"was {target.Type}, now {type}"
            : reply.Body.Length != target.Length ? Text($"had {target.Length} bytes, now {reply.Body.Length}")
            : PatternWriter.Hash(reply.Body) != target.Sha256 ? "has other bytes"
            : null;
    }

    private static string? MediaType(string? type) => type?.Split(';')[0];

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
