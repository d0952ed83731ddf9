using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace PatternShop.Store;

/// <summary>The database file in its folder, and contexts on it.</summary>
internal sealed class SqliteFile : IDisposable
{
    private readonly DbContextOptions<SqliteStoreContext> _options;
    private readonly string _connection;

    /// <param name="folder">The data folder.</param>
    /// <param name="patience">How long a connection waits for another that writes.</param>
    /// <param name="interceptors">Further listeners.</param>
    public SqliteFile(string folder, TimeSpan patience, params IInterceptor[] interceptors)
    {
        Folder = System.IO.Path.GetFullPath(folder);
        _connection = new SqliteConnectionStringBuilder
        {
            DataSource = Path,
            Mode = SqliteOpenMode.ReadWrite,
            DefaultTimeout = (int)Math.Ceiling(patience.TotalSeconds),
        }.ToString();
        _options = new DbContextOptionsBuilder<SqliteStoreContext>()
            .UseSqlite(_connection)
            .AddInterceptors([new SqliteSettings(patience), .. interceptors])
            .Options;
    }

    public string Folder { get; }

    public string Path => System.IO.Path.Combine(Folder, "patternshop.db");

    public SqliteStoreContext Context() => new(_options);

    /// <summary>Closes the connections that wait to be used again, so that the log is folded into the file.</summary>
    public void Dispose()
    {
        using var connection = new SqliteConnection(_connection);
        SqliteConnection.ClearPool(connection);
    }
}
