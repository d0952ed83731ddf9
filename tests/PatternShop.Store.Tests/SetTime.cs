namespace PatternShop.Store.Tests;

/// <summary>A clock that stands still until it is set.</summary>
internal sealed class SetTime : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2026, 2, 3, 4, 5, 6, TimeSpan.Zero);

    /// <summary>Waiting on this clock is a failure.</summary>
    public bool NoTimers { get; set; }

    public override DateTimeOffset GetUtcNow() => Now;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        NoTimers ? throw new InvalidOperationException("Nobody may wait here.") : base.CreateTimer(callback, state, dueTime, period);
}
