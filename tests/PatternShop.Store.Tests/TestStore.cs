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

    private readonly DirectoryInfo? _top;
    private readonly HashingThreads _threads;

    private TestStore(string folder, TimeSpan patience, DirectoryInfo? top, IInterceptor[] interceptors)
    {
        _top = top;
        File = new SqliteFile(folder, patience, interceptors);
        Access = new StoreAccess(File.Context, Health);
        Check = new StoreCheck(Access, Health, new SqliteInspection(File), Time);
        Start = new StoreStart(new SqliteOpening(File, Time));
        _threads = new HashingThreads(Hashing);
        Makers = new Makers(Access, _threads, Time, Random);
        Workroom = new Workroom(Access, Time, Random);
        Sweeping = new Sweeping(Access, Time);
        Shelf = new PublicShelf(Access);
        Previews = new PreviewDesk(Access, Time, Random);
        Photos = new PhotoDesk(Access, Time);
        Reports = new ReportDesk(Access, Time, Random);
    }

    public static PassphraseHashing Hashing { get; } = new(10, PassphraseHashing.Pbkdf2);

    /// <summary>There is no such maker.</summary>
    public static MakerId Nobody { get; } = new(4711);

    public SqliteFile File { get; }

    public StoreAccess Access { get; }

    public StoreHealth Health { get; } = new();

    public StoreCheck Check { get; }

    public StoreStart Start { get; }

    public Makers Makers { get; }

    public Workroom Workroom { get; }

    public Sweeping Sweeping { get; }

    public PublicShelf Shelf { get; }

    public PreviewDesk Previews { get; }

    public PhotoDesk Photos { get; }

    public ReportDesk Reports { get; }

    public SetTime Time { get; } = new();

    public RandomNumberGenerator Random { get; } = RandomNumberGenerator.Create();

    /// <summary>A store whose folder was not made yet.</summary>
    public static TestStore Unopened(params IInterceptor[] interceptors)
    {
        var top = Directory.CreateTempSubdirectory("store");
        return new TestStore(Path.Combine(top.FullName, "data"), TimeSpan.FromMilliseconds(200), top, interceptors);
    }

    /// <summary>Another one on the same folder, as another process would have it; patient.</summary>
    public TestStore Beside() => new(File.Folder, TimeSpan.FromSeconds(30), null, []);

    public static async Task<TestStore> OpenAsync(params IInterceptor[] interceptors)
    {
        var store = Unopened(interceptors);
        await EmptyDatabase.PutAsync(store.File.Folder);
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

    /// <summary>The maker who signs in so; null when the pair is wrong.</summary>
    public async Task<Maker?> SignInAsync(string email, string passphrase) =>
        (await Makers.SignInAsync(email, passphrase, HashingLane.Strangers) as SignInResult.Done)?.Maker;

    public Task<PatternId> PatternAsync(MakerId maker, PatternDocument? document = null) =>
        Workroom.CreateAsync(maker, document ?? Charts.Document(Charts.TenEndDiamond));

    /// <summary>A request for the pattern as it stands, with two files.</summary>
    public async Task<IssueRequest> RequestAsync(MakerId maker, PatternId id, int? number = null)
    {
        var open = (await Workroom.OpenAsync(maker, id))!;
        var next = number ?? (await Workroom.NextNumberAsync(maker, id))!.Value;
        var request = Request(open.Revision, next, open.Document);
        return request with { Code = CopyCode.Of(id, next, request.Hash) };
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
        _threads.Dispose();
        Access.Dispose();
        Start.Dispose();
        File.Dispose();
        Random.Dispose();
        _top?.Delete(recursive: true);
        await ValueTask.CompletedTask;
    }
}
