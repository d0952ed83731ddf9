using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>The one-time code of set-up. It has 130 random bits, so a plain hash of it keeps it secret.</summary>
internal static class SetUpCode
{
    public static string Hash(string code) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Plainly(code))));

    public static async Task<bool> MatchesAsync(StoreContext context, string code, CancellationToken cancellationToken)
    {
        var kept = await Settings.GetAsync(context, Settings.SetUpCode, cancellationToken);
        return kept is not null && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(kept), Encoding.UTF8.GetBytes(Hash(code)));
    }

    // typed from a screen, it may hold spaces and capitals
    private static string Plainly(string code) => string.Concat(code.Where(char.IsAsciiLetterOrDigit)).ToLowerInvariant();
}

/// <summary>Single values that belong to the whole shop.</summary>
internal static class Settings
{
    public const string SetUpCode = "set-up code hash";
    public const string PublicAddress = "public address";
    public const string SweptAt = "swept at";
    public const string WriteTried = "write tried at";

    public static Task<string?> GetAsync(StoreContext context, string name, CancellationToken cancellationToken) =>
        context.Settings.Where(row => row.Name == name).Select(row => row.Value).SingleOrDefaultAsync(cancellationToken);

    public static async Task SetAsync(StoreContext context, string name, string? value, CancellationToken cancellationToken)
    {
        await context.Settings.Where(row => row.Name == name).ExecuteDeleteAsync(cancellationToken);
        if (value is not null)
        {
            context.Settings.Add(new SettingRow { Name = name, Value = value });
        }
    }
}
