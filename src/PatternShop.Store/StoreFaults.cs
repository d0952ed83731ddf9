using Microsoft.Data.Sqlite;

namespace PatternShop.Store;

/// <summary>Says what failures of the database and of the file system mean to an operator.</summary>
internal static class StoreFaults
{
    public static StoreException Explain(Exception failure)
    {
        var root = failure.GetBaseException();
        var fault = root is SqliteException sqlite ? OfSqlite(sqlite.SqliteErrorCode) : OfFiles(root);
        return new StoreException(fault, $"{Words(fault)} ({root.Message})", failure);
    }

    /// <summary>Bytes that are stored under a hash are not those that it is of.</summary>
    public static StoreException DamagedContent(string hash) => new(
        StoreFault.Damaged,
        $"What is stored under the hash {hash} is damaged, and isn't sent to anybody. Stop the server and restore the data folder from a backup.");

    // the codes are SQLite's: full; corrupt, not a database; permission, read-only, input and output, cannot open, authorisation
    private static StoreFault OfSqlite(int code) => code switch
    {
        13 => StoreFault.DiskFull,
        11 or 26 => StoreFault.Damaged,
        3 or 8 or 10 or 14 or 23 => StoreFault.Unusable,
        _ => StoreFault.Passing,
    };

    // "no space left" and "quota exceeded" of Unix, "disk full" of Windows
    private static StoreFault OfFiles(Exception failure) =>
        failure.HResult is 28 or 122 or unchecked((int)0x80070070) ? StoreFault.DiskFull : StoreFault.Unusable;

    private static string Words(StoreFault fault) => fault switch
    {
        StoreFault.DiskFull => "The disk is full. Make room on it; nothing that was saved is lost.",
        StoreFault.Damaged => "The database is damaged or isn't one of PatternShop's. Stop the server and restore the data folder from a backup.",
        StoreFault.Unusable => "The data folder can't be read and written. Check that it is there, whose it is, and that its disk is well.",
        _ => "The database did not do it.",
    };
}
