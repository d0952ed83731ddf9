using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

public sealed class OpeningTests
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    [Fact]
    public async Task A_new_folder_is_its_owners_alone()
    {
        await using var store = await TestStore.OpenAsync();
        await store.MakerAsync();
        Assert.Equal(OwnerOnly | UnixFileMode.UserExecute, Mode(store.File.Folder));
        Assert.All(Directory.GetFiles(store.File.Folder), file => Assert.Equal(OwnerOnly, Mode(file)));
        Assert.Contains(store.File.Path + "-wal", Directory.GetFiles(store.File.Folder), StringComparer.Ordinal);
    }

    [Fact]
    public async Task Connections_are_durable_and_patient()
    {
        await using var store = await TestStore.OpenAsync();
        await using var context = store.File.Context();
        await context.Database.OpenConnectionAsync();
        var connection = (SqliteConnection)context.Database.GetDbConnection();
        Assert.Equal("wal", connection.Sql("PRAGMA journal_mode"));
        Assert.Equal(2L, connection.Sql("PRAGMA synchronous"));
        Assert.Equal(1L, connection.Sql("PRAGMA foreign_keys"));
        Assert.Equal(200L, connection.Sql("PRAGMA busy_timeout"));
    }

    [Fact]
    public async Task The_migrations_make_the_model()
    {
        await using var store = await TestStore.OpenAsync();
        await using var context = store.File.Context();
        Assert.False(context.Database.HasPendingModelChanges());
        Assert.Empty(await context.Database.GetPendingMigrationsAsync());
    }

    [Fact]
    public async Task Opening_again_and_at_once_changes_nothing()
    {
        await using var store = TestStore.Unopened();
        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => new StoreStart(new SqliteOpening(store.File, store.Time)).OpenAsync())));
        var maker = await store.MakerAsync();
        using var raw = store.Raw();
        var before = raw.Dump();
        await store.Start.OpenAsync();
        await store.Start.OpenAsync();
        Assert.Equal(before, raw.Dump());
        Assert.NotNull(await store.Makers.FindAsync(maker));
        Assert.False(Directory.Exists(Path.Combine(store.File.Folder, "copies")));
    }

    [Fact]
    public async Task A_copy_is_taken_before_tables_are_changed()
    {
        await using var store = await OlderAsync();
        List<string> before;
        using (var raw = store.Raw())
        {
            before = raw.Dump();
        }

        await store.Start.OpenAsync();
        var path = Assert.Single(Directory.GetFiles(Path.Combine(store.File.Folder, "copies")));
        Assert.Equal("before-20261125001500_Protection-20260203T040506Z.db", Path.GetFileName(path));
        Assert.Equal(OwnerOnly, Mode(path));
        using (var copy = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString()))
        {
            copy.Open();
            Assert.Equal("ok", copy.Sql("PRAGMA integrity_check"));
            Assert.Equal(before, copy.Dump());
        }

        Assert.Single(await store.Workroom.ListAsync(new MakerId(1)));
    }

    [Fact]
    public async Task A_copy_that_fails_leaves_nothing_behind_and_changes_nothing()
    {
        await using var store = await OlderAsync();
        var copies = Path.Combine(store.File.Folder, "copies");
        // nothing can be put in the place of a folder
        Directory.CreateDirectory(Path.Combine(copies, "before-20261125001500_Protection-20260203T040506Z.db"));
        using var raw = store.Raw();
        var before = raw.Dump();
        await Assert.ThrowsAsync<StoreException>(() => store.Start.OpenAsync());
        Assert.Empty(Directory.GetFiles(copies));
        Assert.Equal(before, raw.Dump());
    }

    [Fact]
    public async Task A_store_can_be_brought_back_from_its_copy()
    {
        await using var store = await OlderAsync();
        await store.Start.OpenAsync();
        var copy = Assert.Single(Directory.GetFiles(Path.Combine(store.File.Folder, "copies")));
        var id = await store.PatternAsync(new MakerId(1));
        store.File.Dispose();
        File.Copy(copy, store.File.Path, overwrite: true);
        await new StoreStart(new SqliteOpening(store.File, store.Time)).OpenAsync();
        Assert.Null(await store.Workroom.OpenAsync(new MakerId(1), id));
        Assert.Single(await store.Workroom.ListAsync(new MakerId(1)));
    }

    [Fact]
    public async Task A_lock_left_by_a_killed_process_is_cleared()
    {
        await using var store = await OlderAsync();
        using var raw = store.Raw();
        raw.Sql("INSERT INTO __EFMigrationsLock (Id, Timestamp) VALUES (1, '2026-01-01')");
        await store.Start.OpenAsync();
        Assert.Equal(0L, raw.Sql("SELECT count(*) FROM __EFMigrationsLock"));
        Assert.Equal(5L, raw.Sql("SELECT count(*) FROM __EFMigrationsHistory"));
    }

    [Fact]
    public async Task Tables_of_a_newer_program_are_refused_and_left_alone()
    {
        await using var store = await TestStore.OpenAsync();
        using var raw = store.Raw();
        raw.Sql("INSERT INTO __EFMigrationsHistory (MigrationId, ProductVersion) VALUES ('29990101000000_Later', '99.0.0')");
        await RefusedAsync(store, "29990101000000_Later");
    }

    [Fact]
    public async Task Documents_of_a_newer_program_are_refused_and_left_alone()
    {
        await using var store = await TestStore.OpenAsync();
        using var raw = store.Raw();
        Assert.Equal((long)PatternWriter.Format, raw.Sql("PRAGMA user_version"));
        raw.Sql("PRAGMA user_version = 99");
        await RefusedAsync(store, "format 99");
        Assert.Equal(99L, raw.Sql("PRAGMA user_version"));
    }

    [Theory]
    [InlineData("3.40.1", false)]
    [InlineData("3.51.2", false)]
    [InlineData("3.51.3", true)]
    [InlineData("3.53.0", true)]
    [InlineData("4.0.0", true)]
    public void An_old_SQLite_is_refused(string version, bool good)
    {
        if (good)
        {
            SqliteOpening.RequireSqlite(version);
        }
        else
        {
            Assert.Contains("3.51.3 or newer", Assert.Throws<StoreException>(() => SqliteOpening.RequireSqlite(version)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Who_opens_waits_for_another_who_is_opening()
    {
        await using var store = TestStore.Unopened();
        DataFolder.Make(store.File.Folder);
        var other = await FolderLock.TakeAsync(store.File.Folder, store.Time, CancellationToken.None);
        using var impatient = new CancellationTokenSource();
        var stopped = store.Start.OpenAsync(impatient.Token);
        var waiting = new StoreStart(new SqliteOpening(store.File, store.Time)).OpenAsync();
        await impatient.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => stopped);
        Assert.False(File.Exists(store.File.Path));
        Assert.False(waiting.IsCompleted);
        other.Dispose();
        await waiting;
        await store.MakerAsync();
    }

    [Fact]
    public async Task A_server_has_its_folder_alone_until_it_ends_and_commands_open_it_beside()
    {
        await using var store = TestStore.Unopened();
        await store.Start.ServeAsync();
        await store.Start.ServeAsync();
        await using (var command = store.Beside())
        {
            await command.Start.OpenAsync();
            var refused = await Assert.ThrowsAsync<StoreException>(() => command.Start.ServeAsync());
            Assert.StartsWith("Another PatternShop server is running on this data folder.", refused.Message, StringComparison.Ordinal);
        }

        store.Start.Dispose();
        await using var next = store.Beside();
        await next.Start.ServeAsync();
    }

    [Fact]
    public async Task A_failure_that_is_no_lock_is_not_waited_for()
    {
        await using var store = TestStore.Unopened();
        DataFolder.Make(store.File.Folder);
        // a link that leads to itself in place of the lock: no waiting makes it a file
        var held = Path.Combine(store.File.Folder, "opening.lock");
        File.CreateSymbolicLink(held, held);
        store.Time.NoTimers = true;
        var refused = await Assert.ThrowsAsync<StoreException>(() => store.Start.OpenAsync());
        Assert.DoesNotContain("Another process", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_opened_is_said_and_left_alone()
    {
        await using var store = TestStore.Unopened();
        await Assert.ThrowsAsync<StoreException>(() => store.Makers.AnyAsync());
        await Assert.ThrowsAsync<StoreException>(() => store.Makers.SetUpCodeAsync());
        DataFolder.Make(store.File.Folder);
        await File.WriteAllTextAsync(store.File.Path, new string('?', 5000));
        await Assert.ThrowsAsync<StoreException>(() => store.Start.OpenAsync());
        Assert.Equal(new string('?', 5000), await File.ReadAllTextAsync(store.File.Path));
        File.Delete(store.File.Path);
        Directory.Delete(store.File.Folder, recursive: true);
        await File.WriteAllTextAsync(store.File.Folder, "not a folder");
        await Assert.ThrowsAsync<StoreException>(() => store.Start.OpenAsync());
    }

    /// <summary>A store of the program before the last migration, with a maker and a pattern.</summary>
    private static async Task<TestStore> OlderAsync()
    {
        var store = TestStore.Unopened();
        DataFolder.Make(store.File.Folder);
        DataFolder.MakeFile(store.File.Path);
        await using var context = store.File.Context();
        await context.GetService<IMigrator>().MigrateAsync("20261125001431_Tables");
        var maker = await store.MakerAsync();
        // as that program wrote it: its table lacks what came later
        var packed = PackedDocument.Of(Charts.Document("xx../..xx"));
        using var raw = store.Raw();
        raw.Sql($"INSERT INTO Patterns (Id, MakerId, Title, Hash, Revision, Cursor, MadeAt, ChangedAt) VALUES ('abcdefghjk', {maker.Value}, 'Test cloth', '{packed.Hash}', 1, 0, '2026-02-03 04:05:06', '2026-02-03 04:05:06')");
        raw.Sql($"INSERT INTO Steps (PatternId, Position, Name, TakenAt, Content) VALUES ('abcdefghjk', 0, '', '2026-02-03 04:05:06', x'{Convert.ToHexString(packed.Content)}')");
        return store;
    }

    private static UnixFileMode Mode(string path) =>
        OperatingSystem.IsWindows() ? throw new PlatformNotSupportedException("The tests need modes of files.") : File.GetUnixFileMode(path);

    private static async Task RefusedAsync(TestStore store, string named)
    {
        using var raw = store.Raw();
        var before = raw.Dump();
        var refused = await Assert.ThrowsAsync<StoreException>(() => new StoreStart(new SqliteOpening(store.File, store.Time)).OpenAsync());
        Assert.Contains("newer program", refused.Message, StringComparison.Ordinal);
        Assert.Contains(named, refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, raw.Dump());
    }
}
