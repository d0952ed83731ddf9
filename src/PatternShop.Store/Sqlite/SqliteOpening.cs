using System.Data.Common;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>Brings the database file to where the program can work with it.</summary>
internal sealed class SqliteOpening(SqliteFile file, TimeProvider time)
{
    /// <summary>Older ones can damage a file that is written ahead of (mended in SQLite 3.51.3).</summary>
    private static readonly Version LeastSqlite = new(3, 51, 3);

    public async Task OpenAsync(CancellationToken cancellationToken)
    {
        RequireSqlite(new SqliteConnection().ServerVersion);
        DataFolder.Make(file.Folder);
        using var alone = await FolderLock.TakeAsync(file.Folder, time, cancellationToken);
        var made = new FileInfo(file.Path) is { Exists: true, Length: > 0 };
        if (!made)
        {
            SqliteFirstStart.Require(file.Folder);
        }

        DataFolder.MakeFile(file.Path);
        await using var context = file.Context();
        await context.Database.OpenConnectionAsync(cancellationToken);
        var connection = context.Database.GetDbConnection();
        if (made && (await AppliedAsync(connection, cancellationToken)).Count == 0)
        {
            await RequireUnfinishedAsync(connection, cancellationToken);
        }

        await SqlAsync(connection, "PRAGMA journal_mode = WAL", cancellationToken);
        await MigrateAsync(context, connection, cancellationToken);
    }

    /// <summary>Takes the folder for a server, the folder made where there is none.</summary>
    public IDisposable TakeForServer()
    {
        DataFolder.Make(file.Folder);
        return FolderLock.TakeForServer(file.Folder);
    }

    internal static void RequireSqlite(string version)
    {
        if (Version.Parse(version) < LeastSqlite)
        {
            throw new StoreException($"SQLite {version} was found; {LeastSqlite} or newer is needed.");
        }
    }

    private async Task MigrateAsync(SqliteStoreContext context, DbConnection connection, CancellationToken cancellationToken)
    {
        var known = context.Database.GetMigrations().ToList();
        var applied = await AppliedAsync(connection, cancellationToken);
        RefuseNewer(applied.Except(known, StringComparer.Ordinal).Order(StringComparer.Ordinal).LastOrDefault());
        var format = await FormatAsync(connection, cancellationToken);
        if (known.Except(applied, StringComparer.Ordinal).FirstOrDefault() is { } first)
        {
            if (applied.Count > 0)
            {
                await SqliteCopy.MakeAsync(connection, file.Folder, first, time.GetUtcNow(), cancellationToken);
            }

            await ClearStaleLockAsync(connection, cancellationToken);
            await context.Database.MigrateAsync(cancellationToken);
        }

        if (format != PatternWriter.Format)
        {
            await SqlAsync(connection, string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {PatternWriter.Format}"), cancellationToken);
        }
    }

    // a first start that was cut short leaves no table but those of the migrations themselves, which EF names with two lines in front
    private async Task RequireUnfinishedAsync(DbConnection connection, CancellationToken cancellationToken)
    {
        SqliteFirstStart.RequireOurs((string?)await SqlAsync(
            connection, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE '\\_\\_EF%' ESCAPE '\\' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name LIMIT 1", cancellationToken));
        SqliteFirstStart.Require(file.Folder);
    }

    private static void RefuseNewer(string? migration)
    {
        if (migration is not null)
        {
            throw new StoreException($"The data folder was written by a newer program (it has \"{migration}\", which this one does not know). Start the newer program, or bring back a copy of the folder.");
        }
    }

    /// <summary>The format of the newest documents in the file. The same tables may hold documents of a format that came later.</summary>
    private static async Task<int> FormatAsync(DbConnection connection, CancellationToken cancellationToken)
    {
        var format = Convert.ToInt32(await SqlAsync(connection, "PRAGMA user_version", cancellationToken), CultureInfo.InvariantCulture);
        return format <= PatternWriter.Format ? format : throw new StoreException(string.Create(
            CultureInfo.InvariantCulture,
            $"The data folder was written by a newer program: it holds patterns of format {format}, this one knows formats up to {PatternWriter.Format}. Start the newer program, or bring back a copy of the folder."));
    }

    private static async Task<List<string>> AppliedAsync(DbConnection connection, CancellationToken cancellationToken)
    {
        var applied = new List<string>();
        if (!await HasTableAsync(connection, "__EFMigrationsHistory", cancellationToken))
        {
            return applied;
        }

        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT MigrationId FROM __EFMigrationsHistory";
        await using var reader = await command.ExecuteReaderAsync(cancellationToken);
        while (await reader.ReadAsync(cancellationToken))
        {
            applied.Add(reader.GetString(0));
        }

        return applied;
    }

    // a process that was killed while migrating leaves its row, and the next one would wait for ever; nobody else is here, we hold the folder's lock
    private static async Task ClearStaleLockAsync(DbConnection connection, CancellationToken cancellationToken)
    {
        if (await HasTableAsync(connection, "__EFMigrationsLock", cancellationToken))
        {
            await SqlAsync(connection, "DELETE FROM __EFMigrationsLock", cancellationToken);
        }
    }

    private static async Task<bool> HasTableAsync(DbConnection connection, string table, CancellationToken cancellationToken) =>
        await SqlAsync(connection, $"SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = '{table}'", cancellationToken) is not null;

    private static async Task<object?> SqlAsync(DbConnection connection, string sql, CancellationToken cancellationToken)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        return await command.ExecuteScalarAsync(cancellationToken);
    }
}
