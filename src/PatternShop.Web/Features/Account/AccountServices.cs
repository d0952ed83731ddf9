using Microsoft.AspNetCore.DataProtection;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Puts accounts into a program.</summary>
internal static class AccountServices
{
    /// <summary>What the server and the operator's commands share: the store, the keys beside it, and the browsers that are known.</summary>
    public static IServiceCollection AddAccountStore(this IServiceCollection services, HostSettings settings)
    {
        services.AddSingleton(settings);
        services.AddPatternStore(settings.DataFolder);
        services.AddSingleton<ShopAddress>();
        services.AddSingleton<KnownBrowsers>();
        services.AddDataProtection()
            .SetApplicationName("PatternShop")
            .PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(settings.DataFolder, "keys")));
        return services;
    }

    /// <summary>What the server needs besides.</summary>
    public static void AddAccount(this IServiceCollection services)
    {
        services.AddSingleton<AccountThrottles>();
        services.AddSingleton<SetUpInvitation>();
        services.AddSingleton<BusyPage>();
        services.AddSingleton<OpenSessions>();
        services.AddSingleton<SessionFilter>();
        services.AddHostedService<SessionCheck>();
    }
}
