using Microsoft.Data.Sqlite;
using PatternShop.Weave;
using SQLitePCL;

namespace PatternShop.Store;

/// <summary>Reads the database through on a connection of its own, which writes nothing and keeps no writer out.</summary>
internal sealed class SqliteInspection(SqliteFile file)
{
    /// <summary>Bytes that may still be written on the data folder's disk; the most there can be where that is not known.</summary>
    public long Room()
    {
        try
        {
            return new DriveInfo(file.Folder).AvailableFreeSpace;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return long.MaxValue;
        }
    }

    /// <summary>Checks the structure of the database, then the hash of every stored file.</summary>
    /// <param name="found">Is called with each damage.</param>
    /// <param name="cancellationToken">Ends it at once, in the middle of a statement as well.</param>
    public Task RunAsync(Action<StoreException> found, CancellationToken cancellationToken) => Task.Factory.StartNew(
        () =>
        {
            try
            {
                Run(found, cancellationToken);
            }
            catch (SqliteException) when (cancellationToken.IsCancellationRequested)
            {
                // it was interrupted
            }
            catch (SqliteException failure)
            {
                found(StoreFaults.Explain(failure));
            }
        },
        cancellationToken,
        TaskCreationOptions.LongRunning,
        TaskScheduler.Default);

    private void Run(Action<StoreException> found, CancellationToken cancellationToken)
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file.Path, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString());
        connection.Open();
        using var ends = cancellationToken.Register(() => raw.sqlite3_interrupt(connection.Handle));
        using var check = connection.CreateCommand();
        check.CommandText = "PRAGMA quick_check(1)";
        check.CommandTimeout = 0;
        if (check.ExecuteScalar() is var said && said is not "ok")
        {
            found(new StoreException(StoreFault.Damaged, $"The database is damaged. Stop the server and restore the data folder from a backup. ({said})"));
            return;
        }

        foreach (var hash in Hashes(connection))
        {
            cancellationToken.ThrowIfCancellationRequested();
            using var one = connection.CreateCommand();
            one.CommandText = "SELECT Bytes FROM Files WHERE Hash = $hash";
            one.Parameters.AddWithValue("$hash", hash);
            if (one.ExecuteScalar() is byte[] bytes && PatternWriter.Hash(bytes) != hash)
            {
                found(StoreFaults.DamagedContent(hash));
            }
        }
    }

    private static List<string> Hashes(SqliteConnection connection)
    {
        using var all = connection.CreateCommand();
        all.CommandText = "SELECT Hash FROM Files";
        using var reader = all.ExecuteReader();
        var hashes = new List<string>();
        while (reader.Read())
        {
            hashes.Add(reader.GetString(0));
        }

        return hashes;
    }
}
