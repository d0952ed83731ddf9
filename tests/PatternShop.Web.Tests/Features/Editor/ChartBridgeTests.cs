using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.JSInterop;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What goes between server and script while the script comes and goes.</summary>
public sealed class ChartBridgeTests(SharedBench shared) : IClassFixture<SharedBench>
{
    [Fact]
    public async Task What_is_asked_for_before_the_script_has_answered_is_sent_afterwards()
    {
        var script = new Script();
        using var seat = await shared.Bench.SitAsync(await shared.Bench.PatternAsync());
        await using var bridge = Bridge(seat, script);
        var open = script.Hold("open");
        var opening = bridge.OpenAsync(default);
        using var other = await shared.Bench.SitAsync(seat.Session.Id);
        await new FieldEdits(other, "another window").MakeAsync(TestBench.Stroke(seat.View.Document.Motif, (2, 0, !seat.View.Document.Motif[2, 0])));
        bridge.Tell();
        bridge.Resync();
        Assert.DoesNotContain("receive", script.Called, StringComparer.Ordinal);
        open.SetResult();
        await opening;
        var update = Assert.Single(script.Updates);
        Assert.Equal((seat.View.Revision, MotifCells.Of(seat.View.Document.Motif)), (update.Revision, update.Motif));
    }

    [Fact]
    public async Task Nothing_is_opened_for_a_page_that_went_while_the_script_was_loaded()
    {
        var script = new Script();
        using var seat = await shared.Bench.SitAsync(await shared.Bench.PatternAsync());
        var bridge = Bridge(seat, script);
        var import = script.Hold("import");
        var opening = bridge.OpenAsync(default);
        await bridge.DisposeAsync();
        import.SetResult();
        await opening;
        Assert.DoesNotContain("open", script.Called, StringComparer.Ordinal);
    }

    [Fact]
    public async Task What_was_opened_for_a_page_that_went_meanwhile_is_closed()
    {
        var script = new Script();
        using var seat = await shared.Bench.SitAsync(await shared.Bench.PatternAsync());
        var bridge = Bridge(seat, script);
        var open = script.Hold("open");
        var opening = bridge.OpenAsync(default);
        await bridge.DisposeAsync();
        open.SetResult();
        await opening;
        Assert.Equal("close", script.Called[^1]);
    }

    [Fact]
    public async Task After_its_page_nothing_is_told_marked_or_asked()
    {
        var script = new Script();
        using var seat = await shared.Bench.SitAsync(await shared.Bench.PatternAsync());
        var editing = EditingOf(seat);
        var bridge = new ChartBridge(script, seat, editing, new FieldEdits(seat, "fields"), new ChartFeed(Wording.English), NullLogger.Instance);
        await bridge.OpenAsync(default);
        await bridge.DisposeAsync();
        bridge.Resync();
        bridge.Mark([]);
        Assert.Null(await editing.Chosen());
        Assert.Equal("close", script.Called[^1]);
    }

    [Fact]
    public async Task A_circuit_that_is_gone_while_it_opens_is_no_fault()
    {
        var script = new Script();
        using var seat = await shared.Bench.SitAsync(await shared.Bench.PatternAsync());
        await using var bridge = Bridge(seat, script);
        script.Hold("open").SetException(new JSDisconnectedException("gone"));
        await bridge.OpenAsync(default);
    }

    /// <summary>The framework takes a cancelled task for no fault, and the page would say for ever that it opens.</summary>
    [Fact]
    public async Task A_script_that_never_answers_is_a_fault()
    {
        var script = new Script();
        using var seat = await shared.Bench.SitAsync(await shared.Bench.PatternAsync());
        await using var bridge = Bridge(seat, script);
        script.Hold("open").SetCanceled(TestContext.Current.CancellationToken);
        await Assert.ThrowsAsync<TimeoutException>(() => bridge.OpenAsync(default));
    }

    private static ChartBridge Bridge(PatternSeat seat, Script script) =>
        new(script, seat, EditingOf(seat), new FieldEdits(seat, "fields"), new ChartFeed(Wording.English), NullLogger.Instance);

    private static Editing EditingOf(PatternSeat seat) => new(seat.View, new FieldEdits(seat, "fields"), () => Task.CompletedTask, _ => { });

    /// <summary>A script that notes what it is called for and answers at once, or when it may.</summary>
    private sealed class Script : IJSRuntime, IJSObjectReference
    {
        private readonly Dictionary<string, Task> _held = new(StringComparer.Ordinal);

        public List<string> Called { get; } = [];

        public List<ChartUpdate> Updates { get; } = [];

        public TaskCompletionSource Hold(string call)
        {
            var source = new TaskCompletionSource();
            _held[call] = source.Task;
            return source;
        }

        public async ValueTask<TValue> InvokeAsync<TValue>(string identifier, object?[]? args)
        {
            Called.Add(identifier);
            if (identifier == "receive")
            {
                Updates.Add((ChartUpdate)args![0]!);
            }

            if (_held.TryGetValue(identifier, out var held))
            {
                await held;
            }

            return typeof(TValue) == typeof(IJSObjectReference) ? (TValue)(object)this
                : typeof(TValue) == typeof(string) ? (TValue)(object)"client"
                : default!;
        }

        public ValueTask<TValue> InvokeAsync<TValue>(string identifier, CancellationToken cancellationToken, object?[]? args) => InvokeAsync<TValue>(identifier, args);

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
