namespace PatternShop.Weave;

/// <summary>
/// The longest float that the maker allows, in threads, in length, or in both; a float may be no longer than either.
/// At least one is given: a maker without limits has null instead of this.
/// </summary>
/// <param name="Threads">The most threads that one run of a row or of an end may pass, 1 to 1,000; null where only the length counts.</param>
/// <param name="Length">
/// The longest that a float may be, above 0 and at most 1,000, at most four decimals, in the unit that was typed; a float's length is its
/// threads ÷ sett (weft) or ÷ row density (warp). Null where only threads count.
/// </param>
public sealed record Limits(int? Threads, Length? Length);
