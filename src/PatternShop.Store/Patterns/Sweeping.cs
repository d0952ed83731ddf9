using System.Globalization;
using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>Removes for good what was thrown away long enough ago, whoever's it was.</summary>
public sealed class Sweeping
{
    /// <summary>How far apart two sweeps are that confirm each other's clock: less than the day between daily ones, whose timer is not exact.</summary>
    private static readonly TimeSpan Apart = TimeSpan.FromHours(20);

    private readonly StoreAccess _store;
    private readonly TimeProvider _time;

    internal Sweeping(StoreAccess store, TimeProvider time) => (_store, _time) = (store, time);

    /// <summary>
    /// Removes what was due when the sweep before was made, if that was most of a day ago or longer, and notes the time for the next.
    /// So a program that is started with its clock a month ahead removes nothing that was not due; when the clock is right
    /// again, the note lies ahead and is set back. Answers how many were removed.
    /// </summary>
    /// <exception cref="StoreException">The database could not do it; nothing was removed.</exception>
    public Task<int> SweepConfirmedAsync(CancellationToken cancellationToken = default) => _store.WriteAsync(
        async context =>
        {
            var now = _time.GetUtcNow();
            var noted = await NotedAsync(context, cancellationToken);
            if (noted <= now && now - noted < Apart)
            {
                return 0;
            }

            await Settings.SetAsync(context, Settings.SweptAt, now.ToString("O", CultureInfo.InvariantCulture), cancellationToken);
            return noted is { } confirmed && confirmed <= now ? await Deleted.Over(context, confirmed).ExecuteDeleteAsync(cancellationToken) : 0;
        },
        cancellationToken);

    /// <summary>Removes the patterns that were thrown away <see cref="Deleted.Kept"/> ago or longer, with their steps, photos and previews. Answers how many.</summary>
    /// <exception cref="StoreException">The database could not do it; nothing was removed.</exception>
    internal Task<int> SweepAsync(CancellationToken cancellationToken = default) => _store.WriteAsync(
        context => Deleted.Over(context, _time.GetUtcNow()).ExecuteDeleteAsync(cancellationToken),
        cancellationToken);

    private static async Task<DateTimeOffset?> NotedAsync(StoreContext context, CancellationToken cancellationToken) =>
        DateTimeOffset.TryParseExact(await Settings.GetAsync(context, Settings.SweptAt, cancellationToken), "O", CultureInfo.InvariantCulture, DateTimeStyles.None, out var noted) ? noted : null;
}
