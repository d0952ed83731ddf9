using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace PatternShop.Store;

/// <summary>What each connection must be told: it forgets when it closes, and the provider's own defaults are weaker.</summary>
internal sealed class SqliteSettings(TimeSpan patience) : DbConnectionInterceptor
{
    private readonly string _settings = FormattableString.Invariant(
        $"PRAGMA busy_timeout = {(long)patience.TotalMilliseconds}; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;");

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Tell(connection);

    public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        Tell(connection);
        return Task.CompletedTask;
    }

    private void Tell(DbConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = _settings;
        command.ExecuteNonQuery();
    }
}
