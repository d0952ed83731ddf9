namespace PatternShop.Tests.Shared;

/// <summary>How hard the laws are tried: a few cases with every build, many with PATTERNSHOP_EFFORT=full.</summary>
public static class Effort
{
    public static bool IsFull { get; } =
        string.Equals(Environment.GetEnvironmentVariable("PATTERNSHOP_EFFORT"), "full", StringComparison.OrdinalIgnoreCase);

    public static int Of(int small, int full) => IsFull ? full : small;
}
