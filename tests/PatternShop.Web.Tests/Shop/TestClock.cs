namespace PatternShop.Web.Tests;

/// <summary>A clock that stands still until it is set.</summary>
internal sealed class TestClock : TimeProvider
{
    public static readonly DateTimeOffset Begin = new(2026, 11, 24, 23, 30, 0, TimeSpan.Zero);

    public DateTimeOffset Now { get; set; } = Begin;

    public override DateTimeOffset GetUtcNow() => Now;
}
