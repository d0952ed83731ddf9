using Microsoft.Extensions.DependencyInjection;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>A store in a folder of its own with one maker, and the open patterns on it. The folder goes with it.</summary>
internal sealed class TestBench : IAsyncDisposable
{
    private readonly DirectoryInfo _top = Directory.CreateTempSubdirectory("bench");
    private readonly ServiceProvider _services;

    private TestBench()
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton<TimeProvider>(Time);
        services.AddPatternStore(Path.Combine(_top.FullName, "data"));
        services.AddSingleton(Wording.English);
        services.AddSingleton<OpenSessions>();
        services.AddSingleton<OpenPatterns>();
        _services = services.BuildServiceProvider();
    }

    public HeldTime Time { get; } = new();

    public Workroom Workroom => _services.GetRequiredService<Workroom>();

    public Makers Makers => _services.GetRequiredService<Makers>();

    public OpenPatterns Patterns => _services.GetRequiredService<OpenPatterns>();

    public OpenSessions Sessions => _services.GetRequiredService<OpenSessions>();

    public Maker Maker { get; private set; } = null!;

    /// <summary>Ends every session, as signing out does, and signs the maker in again.</summary>
    public async Task SignOutAndInAsync()
    {
        await Makers.EndSessionsAsync(Maker.Id);
        Maker = (await Makers.FindAsync(Maker.Id))!;
    }

    public static async Task<TestBench> OpenAsync()
    {
        var bench = new TestBench();
        await bench._services.GetRequiredService<StoreStart>().OpenAsync();
        var code = await bench.Makers.SetUpCodeAsync();
        var done = Assert.IsType<SetUpResult.Done>(await bench.Makers.SetUpAsync(code!, new NewMaker("Loom and Larch", "larch", "m@example.org", "seven long grey threads", "UTC"), []));
        bench.Maker = (await bench.Makers.FindAsync(done.Maker))!;
        return bench;
    }

    public Task<PatternId> PatternAsync(PatternDocument? document = null) =>
        Workroom.CreateAsync(Maker.Id, document ?? Charts.Document(Charts.TenEndDiamond));

    public async Task<PatternSeat> SitAsync(PatternId id, Action? changed = null) =>
        (await Patterns.JoinAsync(Maker.Id, Maker.Stamp, id, changed ?? (() => { })))!;

    /// <summary>What the store holds, past every session.</summary>
    public async Task<PatternState> StoredAsync(PatternId id) => (await Workroom.OpenAsync(Maker.Id, id))!.Now;

    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        _top.Delete(recursive: true);
    }

    public static SetCells Stroke(BitGrid motif, params (int Row, int End, bool Over)[] cells) => new(
        BitGrid.Create(motif.Rows, motif.Columns, (row, end) => cells.Any(cell => (cell.Row, cell.End) == (row, end))),
        BitGrid.Create(motif.Rows, motif.Columns, (row, end) => cells.Contains((row, end, true))));
}

/// <summary>One bench for the tests of a class: setting one up takes as long as hashing a passphrase well.</summary>
public sealed class SharedBench : IAsyncLifetime
{
    // a busy machine takes longer than the second that is waited for otherwise; what comes at once is waited for no longer
    static SharedBench() => Bunit.BunitContext.DefaultWaitTimeout = TimeSpan.FromSeconds(30);

    internal TestBench Bench { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Bench = await TestBench.OpenAsync();

    public ValueTask DisposeAsync() => Bench.DisposeAsync();
}

/// <summary>A clock that the store asks in the middle of every transaction: here it can be held up, or fail.</summary>
internal sealed class HeldTime : TimeProvider
{
    private volatile Action _asked = () => { };

    /// <summary>Makes the next questions fail as a full disk would, until <see cref="Go"/>.</summary>
    public void Fail() => _asked = () => throw new StoreException("There is no room left.");

    /// <summary>Holds whoever asks until the gate opens. Ends when somebody has asked.</summary>
    public Task HoldAsync(ManualResetEventSlim gate)
    {
        var asked = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        _asked = () =>
        {
            asked.TrySetResult();
            gate.Wait(TimeSpan.FromSeconds(30));
        };
        return asked.Task;
    }

    public void Go() => _asked = () => { };

    public override DateTimeOffset GetUtcNow()
    {
        _asked();
        return new DateTimeOffset(2026, 2, 3, 4, 5, 6, TimeSpan.Zero);
    }
}
