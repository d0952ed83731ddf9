using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

internal sealed class SqliteStoreContext(DbContextOptions<SqliteStoreContext> options) : StoreContext(options)
{
    public override async Task<IAsyncDisposable> BeginReadAsync(CancellationToken cancellationToken)
    {
        await Database.OpenConnectionAsync(cancellationToken);
        // only the provider can begin a transaction that does not take the write lock
        var transaction = ((SqliteConnection)Database.GetDbConnection()).BeginTransaction(deferred: true);
        await Database.UseTransactionAsync(transaction, cancellationToken);
        return transaction;
    }
}
