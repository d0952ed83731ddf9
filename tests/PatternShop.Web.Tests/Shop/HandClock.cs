using System.Threading.Channels;

namespace PatternShop.Web.Tests;

/// <summary>A clock whose waiting ends when the test says so.</summary>
internal sealed class HandClock : TimeProvider
{
    private readonly Lock _gate = new();
    private readonly List<Waiting> _waiting = [];
    private readonly Channel<TimeSpan> _asked = Channel.CreateUnbounded<TimeSpan>();

    /// <summary>How many wait now.</summary>
    public int Count
    {
        get
        {
            lock (_gate)
            {
                return _waiting.Count;
            }
        }
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var waiting = new Waiting(this, () => callback(state));
        lock (_gate)
        {
            _waiting.Add(waiting);
        }

        _asked.Writer.TryWrite(dueTime);
        return waiting;
    }

    /// <summary>How long the next one waits, or will, that was not asked about yet.</summary>
    public async Task<TimeSpan> NextAsync()
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        return await _asked.Reader.ReadAsync(patience.Token);
    }

    /// <summary>Ends the waiting of everybody who waits now.</summary>
    public void Pass()
    {
        List<Waiting> due;
        lock (_gate)
        {
            due = [.. _waiting];
            _waiting.Clear();
        }

        foreach (var one in due)
        {
            one.End();
        }
    }

    private sealed class Waiting(HandClock clock, Action end) : ITimer
    {
        public void End() => end();

        public bool Change(TimeSpan dueTime, TimeSpan period) => true;

        public void Dispose()
        {
            lock (clock._gate)
            {
                clock._waiting.Remove(this);
            }
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
