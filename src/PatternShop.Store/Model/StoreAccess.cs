using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>How the faces reach the database: many readers, each seeing one state, and one writer at a time.</summary>
internal sealed class StoreAccess(Func<StoreContext> contexts, StoreHealth health) : IDisposable
{
    private readonly SemaphoreSlim _writer = new(1, 1);

    public Task<T> ReadAsync<T>(Func<StoreContext, Task<T>> read, CancellationToken cancellationToken) => Telling(async () =>
    {
        await using var context = contexts();
        context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        await using var state = await context.BeginReadAsync(cancellationToken);
        return await read(context);
    });

    /// <summary>One transaction: everything that was written is on disk when this returns, or nothing is when it throws.</summary>
    public async Task<T> WriteAsync<T>(Func<StoreContext, Task<T>> write, CancellationToken cancellationToken)
    {
        await _writer.WaitAsync(cancellationToken);
        try
        {
            var result = await Telling(() => Transact(write, cancellationToken));
            health.Wrote();
            return result;
        }
        finally
        {
            _writer.Release();
        }
    }

    public void Dispose() => _writer.Dispose();

    private async Task<T> Transact<T>(Func<StoreContext, Task<T>> write, CancellationToken cancellationToken)
    {
        await using var context = contexts();
        context.Database.AutoSavepointsEnabled = false;
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        var result = await write(context);
        // all or nothing is settled here: a caller who has gone away by now changes nothing
        await context.SaveChangesAsync(CancellationToken.None);
        await transaction.CommitAsync(CancellationToken.None);
        return result;
    }

    /// <summary>The bytes, if they are those that were stored under the hash.</summary>
    /// <exception cref="StoreException">They are damaged.</exception>
    public byte[] Intact(string hash, byte[] bytes) => PatternWriter.Hash(bytes) == hash ? bytes : throw Noted(StoreFaults.DamagedContent(hash));

    private async Task<T> Telling<T>(Func<Task<T>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception failure) when (failure is DbException or DbUpdateException)
        {
            throw Noted(StoreFaults.Explain(failure));
        }
    }

    private StoreException Noted(StoreException failure)
    {
        health.Note(failure);
        return failure;
    }
}
