using Microsoft.Data.Sqlite;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>What is damaged or lost on disk is noticed, and neither handed out nor taken for a new shop.</summary>
public sealed class DamageTests
{
    [Theory]
    [InlineData("keys", "key-1.xml", "keys of one", "patternshop.db")]
    [InlineData("copies", "before-a-20260203T040506Z.db", "copies of one", "copies/before-a-20260203T040506Z.db")]
    public async Task A_folder_that_has_lost_its_database_is_no_new_shop(string inner, string name, string said, string remedy)
    {
        foreach (var empty in new byte[]?[] { null, [] })
        {
            await using var store = TestStore.Unopened();
            DataFolder.Make(store.File.Folder);
            Directory.CreateDirectory(Path.Combine(store.File.Folder, inner));
            await File.WriteAllTextAsync(Path.Combine(store.File.Folder, inner, name), "kept");
            if (empty is not null)
            {
                await File.WriteAllBytesAsync(store.File.Path, empty);
            }

            var refused = await Assert.ThrowsAsync<StoreException>(() => store.Start.OpenAsync());
            Assert.Contains(said, refused.Message, StringComparison.Ordinal);
            Assert.Contains(remedy, refused.Message, StringComparison.Ordinal);
            Assert.Equal(empty, File.Exists(store.File.Path) ? await File.ReadAllBytesAsync(store.File.Path) : null);
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_first_start_that_was_cut_short_is_finished_unless_there_are_keys(bool keys)
    {
        await using var store = TestStore.Unopened();
        DataFolder.Make(store.File.Folder);
        DataFolder.MakeFile(store.File.Path);
        using (var raw = store.Raw())
        {
            raw.Sql("CREATE TABLE __EFMigrationsHistory (MigrationId TEXT NOT NULL PRIMARY KEY, ProductVersion TEXT NOT NULL)");
            raw.Sql("CREATE TABLE __EFMigrationsLock (Id INTEGER NOT NULL PRIMARY KEY, Timestamp TEXT NOT NULL)");
        }

        if (keys)
        {
            Directory.CreateDirectory(Path.Combine(store.File.Folder, "keys"));
            await File.WriteAllTextAsync(Path.Combine(store.File.Folder, "keys", "key-1.xml"), "kept");
            await Assert.ThrowsAsync<StoreException>(() => store.Start.OpenAsync());
        }
        else
        {
            await store.Start.OpenAsync();
            Assert.NotNull(await store.Makers.SetUpCodeAsync());
        }
    }

    [Fact]
    public async Task The_database_of_another_program_is_refused_and_left_alone()
    {
        await using var store = TestStore.Unopened();
        DataFolder.Make(store.File.Folder);
        DataFolder.MakeFile(store.File.Path);
        using (var raw = store.Raw())
        {
            raw.Sql("CREATE TABLE Letters (Id INTEGER PRIMARY KEY)");
        }

        var before = await File.ReadAllBytesAsync(store.File.Path);
        var refused = await Assert.ThrowsAsync<StoreException>(() => store.Start.OpenAsync());
        Assert.Contains("another program (it has the table \"Letters\")", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, await File.ReadAllBytesAsync(store.File.Path));
    }

    [Fact]
    public async Task A_file_whose_bytes_are_not_those_of_its_hash_is_not_handed_out_and_is_named_once()
    {
        await using var store = await TestStore.OpenAsync();
        var found = Listen(store);
        var (hash, other) = await DamagedFileAsync(store);
        var refused = await Assert.ThrowsAsync<StoreException>(() => store.Shelf.FileAsync(hash));
        Assert.Equal(StoreFault.Damaged, refused.Fault);
        await Assert.ThrowsAsync<StoreException>(() => store.Shelf.FileAsync(hash));
        Assert.NotNull(await store.Shelf.FileAsync(other));
        Assert.Contains(hash, Assert.Single(found), StringComparison.Ordinal);
        Assert.Equal(StoreFault.Damaged, await store.Check.NowAsync());
    }

    [Fact]
    public async Task A_version_whose_document_is_damaged_is_not_handed_out()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker);
        await store.IssueAsync(maker, id);
        using var raw = store.Raw();
        WithoutTriggers(raw, "Versions");
        raw.Sql("UPDATE Versions SET Canonical = CAST(replace(CAST(Canonical AS TEXT), 'x', '.') AS BLOB)");
        Assert.Equal(StoreFault.Damaged, (await Assert.ThrowsAsync<StoreException>(() => store.Shelf.VersionAsync(id, 1))).Fault);
    }

    [Fact]
    public async Task The_inspection_names_a_damaged_file_that_nobody_asked_for()
    {
        await using var store = await TestStore.OpenAsync();
        var found = Listen(store);
        await store.Check.InspectAsync();
        Assert.Equal(StoreFault.Passing, await store.Check.NowAsync());
        var (hash, _) = await DamagedFileAsync(store);
        await store.Check.InspectAsync();
        Assert.Contains(hash, Assert.Single(found), StringComparison.Ordinal);
        Assert.Equal(StoreFault.Damaged, await store.Check.NowAsync());
    }

    [Fact]
    public async Task The_inspection_sees_a_page_that_holds_nonsense()
    {
        await using var store = await TestStore.OpenAsync();
        await store.PatternAsync(await store.MakerAsync());
        long at;
        using (var raw = store.Raw())
        {
            raw.Sql("PRAGMA wal_checkpoint(TRUNCATE)");
            at = ((long)raw.Sql("SELECT rootpage FROM sqlite_schema WHERE name = 'Reports'")! - 1) * (long)raw.Sql("PRAGMA page_size")!;
        }

        store.File.Dispose();
        await using (var file = File.OpenWrite(store.File.Path))
        {
            file.Position = at;
            await file.WriteAsync(new byte[64]);
        }

        var found = Listen(store);
        await store.Check.InspectAsync();
        Assert.StartsWith("The database is damaged", Assert.Single(found), StringComparison.Ordinal);
        Assert.Equal(StoreFault.Damaged, await store.Check.NowAsync());
    }

    [Fact]
    public async Task An_inspection_ends_when_it_is_told_to()
    {
        await using var store = await TestStore.OpenAsync();
        var found = Listen(store);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => store.Check.InspectAsync(new CancellationToken(canceled: true)));
        Assert.Empty(found);
    }

    private static List<string> Listen(TestStore store)
    {
        var found = new List<string>();
        store.Health.OnFound((_, words) => found.Add(words));
        return found;
    }

    /// <summary>A published version one of whose files is damaged; the hash of that and of a whole one.</summary>
    private static async Task<(string Damaged, string Whole)> DamagedFileAsync(TestStore store)
    {
        var maker = await store.MakerAsync();
        var request = await store.IssueAsync(maker, await store.PatternAsync(maker));
        var (hash, other) = (PatternWriter.Hash(request.Files[0].Bytes), PatternWriter.Hash(request.Files[1].Bytes));
        using var raw = store.Raw();
        WithoutTriggers(raw, "Files");
        raw.Sql($"UPDATE Files SET Bytes = CAST(Bytes || '!' AS BLOB) WHERE Hash = '{hash}'");
        return (hash, other);
    }

    private static void WithoutTriggers(SqliteConnection raw, string table)
    {
        while (raw.Sql($"SELECT name FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = '{table}'") is string trigger)
        {
            raw.Sql($"DROP TRIGGER {trigger}");
        }
    }
}
