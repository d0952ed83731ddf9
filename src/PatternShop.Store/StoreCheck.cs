using System.Globalization;

namespace PatternShop.Store;

/// <summary>Looks whether the store is well: at once as far as that is cheap, and thoroughly in the background.</summary>
public sealed class StoreCheck
{
    /// <summary>Below this a version with all its sheets may not find room.</summary>
    private const long LeastRoom = 8 * 1024 * 1024;

    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(10);
    private readonly StoreAccess _store;
    private readonly StoreHealth _health;
    private readonly SqliteInspection _inspection;
    private readonly TimeProvider _time;
    private long _tried;

    internal StoreCheck(StoreAccess store, StoreHealth health, SqliteInspection inspection, TimeProvider time)
    {
        (_store, _health, _inspection, _time) = (store, health, inspection, time);
        health.OnFound((_, _) => Interlocked.Exchange(ref _tried, _time.GetUtcNow().UtcTicks));
    }

    /// <summary>
    /// The fault that stands now; <see cref="StoreFault.Passing"/> when all is well. While the last write failed, tries one
    /// itself every ten seconds.
    /// </summary>
    public async Task<StoreFault> NowAsync(CancellationToken cancellationToken = default)
    {
        if (_health.CannotWrite && TakesTurn())
        {
            await TryWritingAsync(cancellationToken);
        }

        return _health.Fault == StoreFault.Passing && _inspection.Room() < LeastRoom ? StoreFault.DiskFull : _health.Fault;
    }

    /// <summary>Reads the whole database and every stored file through, and notes what is damaged in <see cref="StoreHealth"/>.</summary>
    public Task InspectAsync(CancellationToken cancellationToken = default) => _inspection.RunAsync(_health.Note, cancellationToken);

    private async Task TryWritingAsync(CancellationToken cancellationToken)
    {
        try
        {
            var now = _time.GetUtcNow().ToString("O", CultureInfo.InvariantCulture);
            await _store.WriteAsync(
                async context =>
                {
                    await Settings.SetAsync(context, Settings.WriteTried, now, cancellationToken);
                    return true;
                },
                cancellationToken);
        }
        catch (StoreException)
        {
            // the store has noted it, and the fault stands
        }
    }

    private bool TakesTurn()
    {
        var (now, before) = (_time.GetUtcNow().UtcTicks, Interlocked.Read(ref _tried));
        return Math.Abs(now - before) >= Pause.Ticks && Interlocked.CompareExchange(ref _tried, now, before) == before;
    }
}
