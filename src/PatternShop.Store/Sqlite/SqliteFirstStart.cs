namespace PatternShop.Store;

/// <summary>
/// Tells a new shop from one that has lost its database. Keys and copies come to be only after the tables, so an empty database beside
/// them is never the rest of a first start that was cut short.
/// </summary>
internal static class SqliteFirstStart
{
    /// <summary>Refuses a folder without a database (or with an empty one) that a shop has lived in.</summary>
    /// <exception cref="StoreException">There are keys or copies.</exception>
    public static void Require(string folder)
    {
        var copies = Files(folder, "copies", "*.db");
        if (copies.Count == 0 && Files(folder, "keys", "*.xml").Count == 0)
        {
            return;
        }

        var remedy = copies.Count > 0 ? $"or from the newest copy (copies/{copies[^1]})" : "with patternshop.db in it";
        throw new StoreException(
            StoreFault.Damaged,
            $"There is no shop in the database, but the folder holds {(copies.Count > 0 ? "copies" : "keys")} of one. Restore the data folder from a backup {remedy}, or name an empty folder to start a new shop.");
    }

    /// <summary>Refuses a database that another program has made.</summary>
    /// <exception cref="StoreException">It has tables, and none of ours.</exception>
    public static void RequireOurs(string? other)
    {
        if (other is not null)
        {
            throw new StoreException(StoreFault.Damaged, $"patternshop.db is a database of another program (it has the table \"{other}\"). Put the right file in its place, or name another data folder.");
        }
    }

    // the newest copy is the last by time of writing, whatever its migration is called
    private static List<string> Files(string folder, string inner, string pattern)
    {
        var path = Path.Combine(folder, inner);
        return Directory.Exists(path) ? [.. new DirectoryInfo(path).GetFiles(pattern).OrderBy(file => file.LastWriteTimeUtc).Select(file => file.Name)] : [];
    }
}
