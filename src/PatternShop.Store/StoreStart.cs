using System.Data.Common;

namespace PatternShop.Store;

/// <summary>Makes the store ready: once, before anything else is asked of it.</summary>
public sealed class StoreStart : IDisposable
{
    private readonly SqliteOpening _opening;
    private readonly SemaphoreSlim _one = new(1, 1);
    private bool _open;

    internal StoreStart(SqliteOpening opening) => _opening = opening;

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
                await _opening.OpenAsync(cancellationToken);
                _open = true;
            }
        }
        catch (Exception failure) when (failure is DbException or IOException or UnauthorizedAccessException)
        {
            throw new StoreException("The data folder cannot be used: " + failure.Message, failure);
        }
        finally
        {
            _one.Release();
        }
    }

    public void Dispose() => _one.Dispose();
}
