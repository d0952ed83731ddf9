using System.Security.Claims;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.SignalR;
using Microsoft.Extensions.Logging.Abstractions;
using PatternShop.Store;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What is open in a session hears that it has ended, and does nothing more.</summary>
public sealed class OpenSessionsTests : IAsyncLifetime
{
    private readonly HandClock _clock = new();
    private TestBench _bench = null!;

    private OpenSessions Sessions => _bench.Sessions;

    public async ValueTask InitializeAsync() => _bench = await TestBench.OpenAsync();

    public ValueTask DisposeAsync() => _bench.DisposeAsync();

    [Fact]
    public async Task Whoever_is_open_in_a_session_that_has_ended_is_told_once_and_nobody_else()
    {
        var old = _bench.Maker;
        var (told, closed, others) = (0, 0, 0);
        using var open = Sessions.Add(old.Id, old.Stamp, () => told++);
        Sessions.Add(old.Id, old.Stamp, () => closed++).Dispose();
        await Sessions.CheckAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, told);
        await _bench.SignOutAndInAsync();
        using var after = Sessions.Add(old.Id, _bench.Maker.Stamp, () => others++);
        await Sessions.CheckAsync(TestContext.Current.CancellationToken);
        await Sessions.CheckAsync(TestContext.Current.CancellationToken);
        Assert.False(await Sessions.IsCurrentAsync(old.Id, old.Stamp, TestContext.Current.CancellationToken));
        Assert.True(await Sessions.IsCurrentAsync(old.Id, _bench.Maker.Stamp, TestContext.Current.CancellationToken));
        Assert.Equal((1, 0, 0), (told, closed, others));
    }

    [Fact]
    public async Task Who_asks_for_a_session_that_has_ended_has_whatever_is_open_in_it_told()
    {
        var old = _bench.Maker;
        var told = 0;
        using var open = Sessions.Add(old.Id, old.Stamp, () => told++);
        await _bench.SignOutAndInAsync();
        Assert.False(await Sessions.IsCurrentAsync(old.Id, old.Stamp, TestContext.Current.CancellationToken));
        Assert.Equal(1, told);
    }

    [Fact]
    public async Task What_was_changed_beside_the_server_is_found_and_the_connection_closed_within_five_seconds_of_the_clock()
    {
        Assert.InRange(SessionCheck.Pause + SessionFilter.Grace, TimeSpan.Zero, TimeSpan.FromSeconds(5));
        var told = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        using var open = Sessions.Add(_bench.Maker.Id, _bench.Maker.Stamp, told.SetResult);
        using var check = new SessionCheck(Sessions, _clock, NullLogger<SessionCheck>.Instance);
        await check.StartAsync(TestContext.Current.CancellationToken);
        await _bench.SignOutAndInAsync();
        Assert.False(told.Task.IsCompleted);
        Assert.Equal(SessionCheck.Pause, await _clock.NextAsync());
        _clock.Pass();
        await told.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
        await check.StopAsync(TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task Over_a_connection_nothing_is_done_once_its_session_has_ended_and_it_is_closed_a_little_later()
    {
        var filter = new SessionFilter(Sessions, _clock);
        var connection = new Connection(MakerPrincipal.Make(_bench.Maker.Id, _bench.Maker.Stamp));
        await filter.OnConnectedAsync(Lifetime(connection), _ => Task.CompletedTask);
        Assert.Equal("done", await CallAsync(filter, connection, "BeginInvokeDotNetFromJS"));
        Assert.Equal("done", await CallAsync(filter, connection, "OnLocationChanged"));
        await _bench.SignOutAndInAsync();
        foreach (var method in new[] { "OnLocationChanged", "BeginInvokeDotNetFromJS", "StartCircuit", "ConnectCircuit", "ResumeCircuit", "UpdateRootComponents" })
        {
            Assert.Null(await CallAsync(filter, connection, method));
        }

        // the page has to be able to say what happened
        Assert.Equal("done", await CallAsync(filter, connection, "OnRenderCompleted"));
        Assert.False(connection.IsAborted);
        Assert.Equal(SessionFilter.Grace, await _clock.NextAsync());
        _clock.Pass();
        await connection.Aborted.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task Nobody_who_is_not_signed_in_has_anything_done()
    {
        var filter = new SessionFilter(Sessions, _clock);
        Assert.Null(await CallAsync(filter, new Connection(new ClaimsPrincipal(new ClaimsIdentity())), "StartCircuit"));
        Assert.Null(await CallAsync(filter, new Connection(null), "StartCircuit"));
    }

    private static ValueTask<object?> CallAsync(SessionFilter filter, Connection connection, string method) =>
        filter.InvokeMethodAsync(new HubInvocationContext(connection, NoServices.Instance, new Methods(), typeof(Methods).GetMethod(method)!, []), _ => ValueTask.FromResult<object?>("done"));

    private static HubLifetimeContext Lifetime(Connection connection) => new(connection, NoServices.Instance, new Methods());

    private sealed class Methods : Hub
    {
        public static void BeginInvokeDotNetFromJS()
        {
        }

        public static void ConnectCircuit()
        {
        }

        public static void OnLocationChanged()
        {
        }

        public static void OnRenderCompleted()
        {
        }

        public static void ResumeCircuit()
        {
        }

        public static void StartCircuit()
        {
        }

        public static void UpdateRootComponents()
        {
        }
    }

    private sealed class NoServices : IServiceProvider
    {
        public static NoServices Instance { get; } = new();

        public object? GetService(Type serviceType) => null;
    }

    private sealed class Connection(ClaimsPrincipal? user) : HubCallerContext
    {
        private readonly TaskCompletionSource _aborted = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public bool IsAborted => Aborted.IsCompleted;

        public Task Aborted => _aborted.Task;

        public override string ConnectionId => "connection";

        public override string? UserIdentifier => null;

        public override ClaimsPrincipal? User => user;

        public override IDictionary<object, object?> Items { get; } = new Dictionary<object, object?>();

        public override IFeatureCollection Features { get; } = new FeatureCollection();

        public override CancellationToken ConnectionAborted => CancellationToken.None;

        public override void Abort() => _aborted.TrySetResult();
    }
}
