using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace PatternShop.Store.Tests;

/// <summary>Breaks the database at a chosen moment: at its nth statement from now, or at the commit.</summary>
internal sealed class Faults : IDbCommandInterceptor, IDbTransactionInterceptor
{
    /// <summary>Statements that still pass; null for all.</summary>
    public int? Passing { get; set; }

    /// <summary>Statements that came since this was set to 0.</summary>
    public int Seen { get; set; }

    /// <summary>Whether commits fail.</summary>
    public bool FailCommit { get; set; }

    /// <summary>What commits wait for.</summary>
    public Task CommitWaits { get; set; } = Task.CompletedTask;

    /// <summary>Ends when a commit began to wait.</summary>
    public TaskCompletionSource CommitReached { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default) => new(Next(result));

    public ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default) => new(Next(result));

    public ValueTask<InterceptionResult<object>> ScalarExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<object> result, CancellationToken cancellationToken = default) => new(Next(result));

    public async ValueTask<InterceptionResult> TransactionCommittingAsync(
        DbTransaction transaction, TransactionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default)
    {
        CommitReached.TrySetResult();
        await CommitWaits;
        return FailCommit ? throw Full() : result;
    }

    private static SqliteException Full() => new("database or disk is full", 13);

    private T Next<T>(T result)
    {
        Seen++;
        if (Passing is { } passing)
        {
            Passing = passing - 1;
            return passing > 0 ? result : throw Full();
        }

        return result;
    }
}
