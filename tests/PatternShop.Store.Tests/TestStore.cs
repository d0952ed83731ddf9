using System.Security.Cryptography;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;
using PatternShop.Tests.Shared;
using PatternShop.Weave;

namespace PatternShop.Store.Tests;

/// <summary>A store in a folder of its own, which goes with it. Passphrases are hashed with few rounds.</summary>
internal sealed class TestStore : IAsyncDisposable
{
    public const string Passphrase = "seven long grey threads";

    private readonly DirectoryInfo _top = Directory.CreateTempSubdirectory("store");
    private readonly StoreAccess _access;

    private TestStore(IInterceptor[] interceptors)
    {
        File = new SqliteFile(Path.Combine(_top.FullName, "data"), TimeSpan.FromMilliseconds(200), interceptors);
        _access = new StoreAccess(File.Context);
        Start = new StoreStart(new SqliteOpening(File, Time));
        Makers = new Makers(_access, Hashing, Time, Random);
        Workroom = new Workroom(_access, Time, Random);
        Shelf = new PublicShelf(_access);
    }

    public static PassphraseHashing Hashing { get; } = new(10);

    public static Maker Nobody { get; } = new(new MakerId(4711), "", "", "", "", "");

    public SqliteFile File { get; }

    public StoreStart Start { get; }

    public Makers Makers { get; }

    public Workroom Workroom { get; }

    public PublicShelf Shelf { get; }

    public SetTime Time { get; } = new();

    public RandomNumberGenerator Random { get; } = RandomNumberGenerator.Create();

    /// <summary>A store whose folder was not made yet.</summary>
    public static TestStore Unopened(params IInterceptor[] interceptors) => new(interceptors);

    public static async Task<TestStore> OpenAsync(params IInterceptor[] interceptors)
    {
        var store = new TestStore(interceptors);
        await store.Start.OpenAsync();
        return store;
    }

    /// <summary>Adds a maker; the second and later ones come in past set-up, as there is no other way yet.</summary>
    public async Task<MakerId> MakerAsync(string handle = "anna")
    {
        await using var context = File.Context();
        var row = new MakerRow
        {
            StudioName = "Studio " + handle,
            Handle = handle,
            Email = handle + "@Example.org",
            EmailKey = handle + "@example.org",
            PassphraseHash = Hashing.Hash(Passphrase, Random),
            Stamp = "stamp of " + handle,
            TimeZone = "UTC",
            MadeAt = Time.GetUtcNow(),
        };
        context.Makers.Add(row);
        await context.SaveChangesAsync();
        return new MakerId(row.Id);
    }

    public Task<PatternId> PatternAsync(MakerId maker, PatternDocument? document = null) =>
        Workroom.CreateAsync(maker, document ?? Charts.Document(Charts.Diamond));

    /// <summary>A request for the pattern as it stands, with two files.</summary>
    public async Task<IssueRequest> RequestAsync(MakerId maker, PatternId id, int? number = null)
    {
        var open = (await Workroom.OpenAsync(maker, id))!;
        var next = number ?? (await Workroom.NextNumberAsync(maker, id))!.Value;
        return Request(open.Revision, next, open.Document);
    }

    public static IssueRequest Request(long revision, int number, PatternDocument document)
    {
        var canonical = PatternWriter.CanonicalBytes(document);
        var hash = PatternWriter.Hash(canonical);
        return new IssueRequest(revision, number, new DateOnly(2026, 2, number), $"Note {number}", canonical, hash,
        [
            new IssuedFile("a4", $"cloth-{number}-a4.pdf", "application/pdf", [1, 4, .. canonical]),
            new IssuedFile("letter", $"cloth-{number}-letter.pdf", "application/pdf", [2, 8, .. canonical]),
        ]);
    }

    /// <summary>Issues the pattern as it stands.</summary>
    public async Task<IssueRequest> IssueAsync(MakerId maker, PatternId id)
    {
        var request = await RequestAsync(maker, id);
        Xunit.Assert.Equal(new IssueResult.Issued(request.Number), await Workroom.IssueAsync(maker, id, request));
        return request;
    }

    /// <summary>A connection of its own, as another program would open it: no foreign keys, no pragmas.</summary>
    public SqliteConnection Raw()
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = File.Path, Pooling = false, ForeignKeys = false, DefaultTimeout = 1 }.ToString());
        connection.Open();
        return connection;
    }

    public async ValueTask DisposeAsync()
    {
        _access.Dispose();
        Start.Dispose();
        File.Dispose();
        Random.Dispose();
        _top.Delete(recursive: true);
        await ValueTask.CompletedTask;
    }
}

/// <summary>A clock that stands still until it is set.</summary>
internal sealed class SetTime : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2026, 2, 3, 4, 5, 6, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => Now;
}

/// <summary>Short ways to run SQL past the store.</summary>
internal static class RawSql
{
    public static object? Sql(this SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }
}
