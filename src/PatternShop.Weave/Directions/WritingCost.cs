namespace PatternShop.Weave;

/// <summary>
/// By what writings are compared, in one number so that costs add and compare at once: items, then brackets that are one motif
/// (the more the better), then brackets with brackets in them, then brackets. Each has 16 bits.
/// </summary>
internal static class WritingCost
{
    public const long Run = 1L << 48;
    public const long Motif = -(1L << 32);
    public const long Nested = 1L << 16;
    public const long Bracket = Run + 1;

    public static bool HasBrackets(long cost) => (cost & 0xFFFF) != 0;
}
