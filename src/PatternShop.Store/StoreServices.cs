using System.Security.Cryptography;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace PatternShop.Store;

/// <summary>Puts the store into a program.</summary>
public static class StoreServices
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>
    /// Adds <see cref="StoreStart"/>, <see cref="StoreHealth"/>, <see cref="StoreCheck"/>, <see cref="Makers"/>, <see cref="Workroom"/>, <see cref="Sweeping"/>, <see cref="PublicShelf"/>, <see cref="PhotoDesk"/>, <see cref="PreviewDesk"/> and <see cref="ReportDesk"/> on an SQLite
    /// database in the folder. The clock (<see cref="TimeProvider"/>) and the source of randomness
    /// (<see cref="RandomNumberGenerator"/>) are those of the program, or the system's where it names none.
    /// </summary>
    public static IServiceCollection AddPatternStore(this IServiceCollection services, string dataFolder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(dataFolder);
        services.TryAddSingleton(TimeProvider.System);
        services.TryAddSingleton(_ => RandomNumberGenerator.Create());
        services.TryAddSingleton(_ => new SqliteFile(dataFolder, Patience));
        services.TryAddSingleton(_ => new StoreHealth());
        services.TryAddSingleton(all => new StoreCheck(
            all.GetRequiredService<StoreAccess>(),
            all.GetRequiredService<StoreHealth>(),
            new SqliteInspection(all.GetRequiredService<SqliteFile>()),
            all.GetRequiredService<TimeProvider>()));
        services.TryAddSingleton(PassphraseHashing.Current);
        services.TryAddSingleton<HashingThreads>();
        services.TryAddSingleton(all => new StoreAccess(all.GetRequiredService<SqliteFile>().Context, all.GetRequiredService<StoreHealth>()));
        services.TryAddSingleton(all => new StoreStart(new SqliteOpening(all.GetRequiredService<SqliteFile>(), all.GetRequiredService<TimeProvider>())));
        services.TryAddSingleton(all => new Makers(
            all.GetRequiredService<StoreAccess>(),
            all.GetRequiredService<HashingThreads>(),
            all.GetRequiredService<TimeProvider>(),
            all.GetRequiredService<RandomNumberGenerator>()));
        services.TryAddSingleton(all => new Workroom(
            all.GetRequiredService<StoreAccess>(),
            all.GetRequiredService<TimeProvider>(),
            all.GetRequiredService<RandomNumberGenerator>()));
        services.TryAddSingleton(all => new Sweeping(all.GetRequiredService<StoreAccess>(), all.GetRequiredService<TimeProvider>()));
        services.TryAddSingleton(all => new PublicShelf(all.GetRequiredService<StoreAccess>()));
        services.TryAddSingleton(all => new PhotoDesk(all.GetRequiredService<StoreAccess>(), all.GetRequiredService<TimeProvider>()));
        services.TryAddSingleton(all => new PreviewDesk(
            all.GetRequiredService<StoreAccess>(),
            all.GetRequiredService<TimeProvider>(),
            all.GetRequiredService<RandomNumberGenerator>()));
        services.TryAddSingleton(all => new ReportDesk(
            all.GetRequiredService<StoreAccess>(),
            all.GetRequiredService<TimeProvider>(),
            all.GetRequiredService<RandomNumberGenerator>()));
        return services;
    }
}
