using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>What was issued never changes and never vanishes: tried past the program, on the database file itself.</summary>
public sealed class ImmutabilityTests
{
    private static readonly string[] Issued = ["Versions", "VersionFiles", "Files"];
    private static readonly string[] Guarded = [.. Issued, "Patterns", "Makers"];
    private static readonly string[] Ways = ["", "OR ABORT ", "OR FAIL ", "OR IGNORE ", "OR REPLACE ", "OR ROLLBACK "];

    [Fact]
    public async Task No_statement_changes_or_removes_what_was_issued()
    {
        await using var store = await IssuedStoreAsync();
        using var raw = store.Raw();
        var before = raw.Dump(Guarded);
        Assert.All(Attacks(raw), attack =>
        {
            var refused = Assert.Throws<SqliteException>(() => raw.Sql(attack));
            Assert.Contains("stays", refused.Message.Replace("never changes and never vanishes", "stays", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.Equal(before, raw.Dump(Guarded));
        });
    }

    [Fact]
    public async Task Recursive_triggers_do_not_matter()
    {
        await using var store = await IssuedStoreAsync();
        using var raw = store.Raw();
        raw.Sql("PRAGMA recursive_triggers = ON");
        Assert.All(Attacks(raw), attack => Assert.Throws<SqliteException>(() => raw.Sql(attack)));
    }

    [Fact]
    public async Task Each_statement_would_do_harm_without_the_triggers()
    {
        await using var store = await IssuedStoreAsync();
        using var raw = store.Raw();
        raw.Texts("SELECT name FROM sqlite_schema WHERE type = 'trigger'").ForEach(trigger => raw.Sql("DROP TRIGGER " + trigger));
        var before = raw.Dump(Guarded);
        Assert.All(Attacks(raw), attack =>
        {
            raw.Sql("SAVEPOINT attack");
            raw.Sql(attack);
            Assert.NotEqual(before, raw.Dump(Guarded));
            raw.Sql("ROLLBACK TO attack");
        });
    }

    [Fact]
    public async Task Every_table_of_versions_has_its_triggers()
    {
        await using var store = await TestStore.OpenAsync();
        using var raw = store.Raw();
        Assert.All(Guarded, table => Assert.Superset(
            new HashSet<string>(StringComparer.Ordinal) { table + "_delete", table + "_insert", table + "_update" },
            raw.Texts($"SELECT name FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = '{table}'").ToHashSet(StringComparer.Ordinal)));
        await using var context = store.File.Context();
        var marked = context.Model.GetEntityTypes().Where(type => typeof(IIssuedRow).IsAssignableFrom(type.ClrType)).Select(type => type.GetTableName()!);
        Assert.Equal(Issued.Order(StringComparer.Ordinal), marked.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task What_may_be_done_still_can_be()
    {
        await using var store = await IssuedStoreAsync();
        var maker = (await store.SignInAsync("anna@example.org", TestStore.Passphrase))!.Id;
        var card = (await store.Workroom.ListAsync(maker)).First(card => card.NewestNumber is not null);
        var thrown = Assert.Single(await store.Workroom.DeletedAsync(maker));
        Assert.True(await store.Workroom.BringBackAsync(maker, thrown.Id));
        await store.IssueAsync(maker, thrown.Id);
        Assert.True(await store.Workroom.WithdrawAsync(maker, card.Id));
        Assert.True(await store.Workroom.RestoreAsync(maker, card.Id));
        Assert.IsType<SetPassphraseResult.Done>(await store.Makers.SetPassphraseAsync("anna@example.org", "another seven threads"));
    }

    /// <summary>Two makers; one pattern with two versions, one with one, one with none, one that was thrown away.</summary>
    internal static async Task<TestStore> IssuedStoreAsync()
    {
        var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var ben = await store.MakerAsync("ben");
        var first = await store.PatternAsync(anna);
        await store.IssueAsync(anna, first);
        await store.IssueAsync(anna, first);
        await store.IssueAsync(ben, await store.PatternAsync(ben, Charts.Document("xx../..xx")));
        await store.PatternAsync(anna);
        await store.Workroom.DeleteAsync(anna, await store.PatternAsync(anna));
        return store;
    }

    private static List<string> Attacks(SqliteConnection raw) =>
    [
        .. from table in Issued from way in Ways from column in raw.Columns(table) select $"UPDATE {way}{table} SET {column} = {column} || '7'",
        .. from table in Issued select $"DELETE FROM {table}",
        .. from table in Issued select $"DELETE FROM {table} WHERE rowid = 1",
        .. from table in Issued select $"UPDATE {table} SET rowid = rowid + 1000",
        .. from table in Issued from row in new[] { "same key", "same rowid" } select Replacement(raw, table, row == "same key"),
        .. from table in Issued select Upsert(raw, table),
        "INSERT INTO VersionFiles SELECT PatternId, Number, 'a5', Place, Name, MediaType, Hash, Size FROM VersionFiles WHERE rowid = 1",
        $"INSERT OR REPLACE INTO Versions ({string.Join(", ", raw.Columns("Versions"))}) SELECT {string.Join(", ", raw.Columns("Versions").Select(column => column == "PatternId" ? "'zzzzzzzzzz'" : column))} FROM Versions WHERE rowid = 1",
        "DELETE FROM Patterns WHERE Id IN (SELECT PatternId FROM Versions)",
        "UPDATE Patterns SET DeletedAt = '2026-02-03 04:05:06' WHERE rowid = 1",
        "UPDATE OR IGNORE Patterns SET DeletedAt = '2026-02-03 04:05:06', Title = 'Other' WHERE rowid < 4",
        $"INSERT INTO Versions ({string.Join(", ", raw.Columns("Versions"))}) SELECT {string.Join(", ", raw.Columns("Versions").Select(column => column switch { "PatternId" => "(SELECT Id FROM Patterns WHERE DeletedAt IS NOT NULL)", "Code" => "NULL", _ => column }))} FROM Versions WHERE rowid = 1",
        "UPDATE Patterns SET Id = 'zzzzzzzzzz' WHERE rowid = 1",
        "UPDATE Patterns SET MakerId = 2 WHERE rowid = 1",
        "UPDATE OR REPLACE Patterns SET Id = (SELECT Id FROM Patterns WHERE rowid = 1) WHERE rowid = 3",
        "UPDATE OR REPLACE Patterns SET rowid = 1 WHERE rowid = 3",
        Replacement(raw, "Patterns", sameKey: true),
        Replacement(raw, "Patterns", sameKey: false),
        "DELETE FROM Makers WHERE Id = 1",
        "UPDATE Makers SET Id = 9 WHERE Id = 1",
        "UPDATE OR REPLACE Makers SET Handle = 'anna' WHERE Id = 2",
        "UPDATE OR REPLACE Makers SET EmailKey = 'anna@example.org' WHERE Id = 2",
        "INSERT OR REPLACE INTO Makers SELECT Id, 'Another', 'other', 'o@example.org', 'o@example.org', '', '', 'UTC', '' FROM Makers WHERE Id = 1",
        "INSERT OR REPLACE INTO Makers SELECT 9, 'Another', Handle, 'o@example.org', 'o@example.org', '', '', 'UTC', '' FROM Makers WHERE Id = 1",
        "REPLACE INTO Makers SELECT 9, 'Another', 'other', 'o@example.org', EmailKey, '', '', 'UTC', '' FROM Makers WHERE Id = 1",
    ];

    /// <summary>Puts another row over the first one: by its key with other content, or by its rowid with another key.</summary>
    private static string Replacement(SqliteConnection raw, string table, bool sameKey)
    {
        var columns = raw.Columns(table);
        var keys = raw.Texts($"SELECT name FROM pragma_table_info('{table}') WHERE pk > 0");
        var values = columns.Select(column => sameKey == keys.Contains(column) ? column : column + " || '7'");
        var (rowid, itsValue) = sameKey ? ("", "") : ("rowid, ", "rowid, ");
        return $"INSERT OR REPLACE INTO {table} ({rowid}{string.Join(", ", columns)}) SELECT {itsValue}{string.Join(", ", values)} FROM {table} WHERE rowid = 1";
    }

    private static string Upsert(SqliteConnection raw, string table)
    {
        var keys = raw.Texts($"SELECT name FROM pragma_table_info('{table}') WHERE pk > 0");
        var other = raw.Columns(table).First(column => !keys.Contains(column));
        return $"INSERT INTO {table} SELECT * FROM {table} WHERE rowid = 1 ON CONFLICT ({string.Join(", ", keys)}) DO UPDATE SET {other} = {other} || '7'";
    }
}
