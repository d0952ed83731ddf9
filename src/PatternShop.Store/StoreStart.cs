using System.Data.Common;

namespace PatternShop.Store;

/// <summary>Makes the store ready: once, before anything else is asked of it.</summary>
public sealed class StoreStart : IDisposable
{
    private readonly SqliteOpening _opening;
    private readonly SemaphoreSlim _one = new(1, 1);
    private bool _open;
    private IDisposable? _serving;

    internal StoreStart(SqliteOpening opening) => _opening = opening;

    /// <summary>
    /// Does what <see cref="OpenAsync"/> does for a server: the data folder is its alone until this is disposed or the process
    /// ends, because a server keeps in memory what it has read. Commands that only open the store may run beside it.
    /// </summary>
    /// <exception cref="StoreException">Another server has the folder, or as with <see cref="OpenAsync"/>.</exception>
    public async Task ServeAsync(CancellationToken cancellationToken = default)
    {
        await Explaining(() =>
        {
            _serving ??= _opening.TakeForServer();
            return Task.CompletedTask;
        });
        await OpenAsync(cancellationToken);
    }

    /// <summary>
    /// Makes the data folder and its database where there is none, and brings an older database up to this program, a copy
    /// taken first. Asking again does nothing.
    /// </summary>
    /// <exception cref="StoreException">The data is of a newer program, or the database cannot be used.</exception>
    public async Task OpenAsync(CancellationToken cancellationToken = default)
    {
        await _one.WaitAsync(cancellationToken);
        try
        {
            if (!_open)
            {
                await Explaining(() => _opening.OpenAsync(cancellationToken));
                _open = true;
            }
        }
        finally
        {
            _one.Release();
        }
    }

    public void Dispose()
    {
        _serving?.Dispose();
        _one.Dispose();
    }

    private static async Task Explaining(Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (Exception failure) when (failure is DbException or IOException or UnauthorizedAccessException)
        {
            throw StoreFaults.Explain(failure);
        }
    }
}
