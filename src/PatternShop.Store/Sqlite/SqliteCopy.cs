using System.Data.Common;
using System.Globalization;
using Microsoft.Data.Sqlite;

namespace PatternShop.Store;

/// <summary>The copy of the database that is taken before its tables are changed.</summary>
internal static class SqliteCopy
{
    /// <summary>Copies the database to "copies/before-MIGRATION-TIME.db" in the folder; under that name it is whole, checked and on disk.</summary>
    public static async Task MakeAsync(DbConnection connection, string folder, string migration, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var copies = Path.Combine(folder, "copies");
        DataFolder.Make(copies);
        var path = Path.Combine(copies, string.Create(CultureInfo.InvariantCulture, $"before-{migration}-{now.UtcDateTime:yyyyMMdd'T'HHmmss'Z'}.db"));
        var unfinished = path + ".part";
        File.Delete(unfinished);
        try
        {
            await FillAsync(connection, unfinished, cancellationToken);
            File.Move(unfinished, path, overwrite: true);
        }
        finally
        {
            // on a full disk the rest of a copy would take the room that is wanted
            File.Delete(unfinished);
        }
    }

    private static async Task FillAsync(DbConnection connection, string unfinished, CancellationToken cancellationToken)
    {
        DataFolder.MakeFile(unfinished);
        await VacuumAsync(connection, unfinished, cancellationToken);
        await CheckAsync(unfinished, cancellationToken);
        using var file = File.OpenHandle(unfinished, FileMode.Open, FileAccess.ReadWrite);
        RandomAccess.FlushToDisk(file);
    }

    private static async Task VacuumAsync(DbConnection connection, string path, CancellationToken cancellationToken)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = "VACUUM INTO $path";
        command.Parameters.Add(new SqliteParameter("$path", path));
        command.CommandTimeout = 0;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }

    private static async Task CheckAsync(string path, CancellationToken cancellationToken)
    {
        var where = new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadOnly, Pooling = false };
        await using var copy = new SqliteConnection(where.ToString());
        await copy.OpenAsync(cancellationToken);
        await using var command = copy.CreateCommand();
        command.CommandText = "PRAGMA integrity_check";
        if (await command.ExecuteScalarAsync(cancellationToken) is not "ok")
        {
            throw new StoreException("The copy that is taken before the tables are changed came out damaged. Nothing was changed.");
        }
    }
}
