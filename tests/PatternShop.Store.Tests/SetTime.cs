namespace PatternShop.Store.Tests;

/// <summary>A clock that stands still until it is set.</summary>
internal sealed class SetTime : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2026, 2, 3, 4, 5, 6, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => Now;
}
