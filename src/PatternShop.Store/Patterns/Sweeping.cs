using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>Removes for good what was thrown away long enough ago, whoever's it was.</summary>
public sealed class Sweeping
{
    private readonly StoreAccess _store;
    private readonly TimeProvider _time;

    internal Sweeping(StoreAccess store, TimeProvider time) => (_store, _time) = (store, time);

    /// <summary>Removes the patterns that were thrown away <see cref="Deleted.Kept"/> ago or longer, with their steps, photos and previews. Answers how many.</summary>
    /// <exception cref="StoreException">The database could not do it; nothing was removed.</exception>
    public Task<int> SweepAsync(CancellationToken cancellationToken = default) => _store.WriteAsync(
        context => Deleted.Over(context, _time.GetUtcNow()).ExecuteDeleteAsync(cancellationToken),
        cancellationToken);
}
