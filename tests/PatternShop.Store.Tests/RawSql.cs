using Microsoft.Data.Sqlite;

namespace PatternShop.Store.Tests;

/// <summary>Short ways to run SQL past the store.</summary>
internal static class RawSql
{
    public static object? Sql(this SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    public static List<string> Texts(this SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        var texts = new List<string>();
        while (reader.Read())
        {
            texts.Add(reader.GetString(0));
        }

        return texts;
    }

    public static List<string> Columns(this SqliteConnection connection, string table) =>
        connection.Texts($"SELECT name FROM pragma_table_info('{table}') ORDER BY cid");

    /// <summary>Every row of the tables (of all of them, when none is named), as text.</summary>
    public static List<string> Dump(this SqliteConnection connection, params string[] tables)
    {
        var all = tables.Length > 0 ? tables : [.. connection.Texts("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY name")];
        return [.. all.SelectMany(table => connection.Rows(table))];
    }

    private static List<string> Rows(this SqliteConnection connection, string table)
    {
        var columns = string.Join(" || ';' || ", connection.Columns(table).Prepend("rowid").Select(column => $"quote({column})"));
        return connection.Texts($"SELECT '{table}: ' || {columns} FROM {table} ORDER BY 1");
    }
}
