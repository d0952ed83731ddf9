using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace PatternShop.Store;

/// <summary>
/// What was issued stays, whoever writes to the file: nothing may be updated or deleted, and nothing may be inserted in
/// its place ("or replace" removes the old row without asking the triggers for deleting; rowid is a key too).
/// </summary>
[DbContext(typeof(SqliteStoreContext))]
[Migration("20261125001500_Protection")]
internal sealed class Protection : Migration
{
    private const string VersionStays = "A version never changes and never vanishes.";
    private const string PatternStays = "A pattern keeps its id and its maker, and stays once something was issued.";
    private const string MakerStays = "A maker with patterns stays.";

    protected override void Up(MigrationBuilder migrationBuilder)
    {
        Keep(migrationBuilder, "Versions", "PatternId = NEW.PatternId AND Number = NEW.Number", VersionStays);
        Keep(migrationBuilder, "VersionFiles", "PatternId = NEW.PatternId AND Number = NEW.Number AND Edition = NEW.Edition", VersionStays);
        Keep(migrationBuilder, "Files", "Hash = NEW.Hash", VersionStays);
        Refuse(
            migrationBuilder,
            "VersionFiles_complete",
            "INSERT ON VersionFiles",
            """
            (SELECT count(*) FROM VersionFiles WHERE PatternId = NEW.PatternId AND Number = NEW.Number)
                >= coalesce((SELECT Files FROM Versions WHERE PatternId = NEW.PatternId AND Number = NEW.Number), 0)
            """,
            VersionStays);
        Patterns(migrationBuilder);
        Makers(migrationBuilder);
    }

    private static void Patterns(MigrationBuilder migration)
    {
        Refuse(migration, "Patterns_delete", "DELETE ON Patterns", "EXISTS (SELECT 1 FROM Versions WHERE PatternId = OLD.Id)", PatternStays);
        Refuse(migration, "Patterns_insert", "INSERT ON Patterns", "EXISTS (SELECT 1 FROM Patterns WHERE Id = NEW.Id OR rowid = NEW.rowid)", PatternStays);
        Refuse(migration, "Patterns_update", "UPDATE ON Patterns", "NEW.Id IS NOT OLD.Id OR NEW.MakerId IS NOT OLD.MakerId OR NEW.rowid IS NOT OLD.rowid", PatternStays);
    }

    private static void Makers(MigrationBuilder migration)
    {
        const string taken = "Handle = NEW.Handle OR EmailKey = NEW.EmailKey";
        Refuse(migration, "Makers_delete", "DELETE ON Makers", "EXISTS (SELECT 1 FROM Patterns WHERE MakerId = OLD.Id)", MakerStays);
        Refuse(migration, "Makers_insert", "INSERT ON Makers", $"EXISTS (SELECT 1 FROM Makers WHERE Id = NEW.Id OR {taken})", MakerStays);
        Refuse(migration, "Makers_update", "UPDATE ON Makers", $"NEW.Id IS NOT OLD.Id OR EXISTS (SELECT 1 FROM Makers WHERE Id <> OLD.Id AND ({taken}))", MakerStays);
    }

    private static void Keep(MigrationBuilder migration, string table, string sameKey, string message)
    {
        Refuse(migration, table + "_delete", "DELETE ON " + table, "1", message);
        Refuse(migration, table + "_insert", "INSERT ON " + table, $"EXISTS (SELECT 1 FROM {table} WHERE ({sameKey}) OR rowid = NEW.rowid)", message);
        Refuse(migration, table + "_update", "UPDATE ON " + table, "1", message);
    }

    private static void Refuse(MigrationBuilder migration, string name, string act, string when, string message) =>
        migration.Sql($"CREATE TRIGGER {name} BEFORE {act} WHEN {when} BEGIN SELECT RAISE(ABORT, '{message}'); END;");
}
