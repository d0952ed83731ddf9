using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>Patterns that were thrown away. Only those are, of which nothing was issued.</summary>
public static class Deleted
{
    /// <summary>How long they can be brought back.</summary>
    public static readonly TimeSpan Kept = TimeSpan.FromDays(30);

    /// <summary>Those of a maker that can still be brought back.</summary>
    internal static IQueryable<PatternRow> Of(StoreContext context, MakerId maker, DateTimeOffset now)
    {
        var gone = now - Kept;
        return context.Patterns.IgnoreQueryFilters().Where(pattern => pattern.MakerId == maker.Value && pattern.DeletedAt > gone);
    }

    /// <summary>Those of everybody whose time is over.</summary>
    internal static IQueryable<PatternRow> Over(StoreContext context, DateTimeOffset now)
    {
        var gone = now - Kept;
        return context.Patterns.IgnoreQueryFilters().Where(pattern => pattern.DeletedAt <= gone);
    }
}
