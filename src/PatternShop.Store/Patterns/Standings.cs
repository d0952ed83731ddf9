using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>What is asked of the newest version to tell how a pattern stands.</summary>
internal sealed record NewestVersion(int Number, DateOnly Date, string Hash, int Format);

/// <summary>Tells how patterns stand: by hashes where both are of one format, else by reading both documents.</summary>
internal static class Standings
{
    /// <summary>One card a pattern, the one changed last first.</summary>
    public static async Task<IReadOnlyList<PatternCard>> ListAsync(StoreContext context, IQueryable<PatternRow> patterns, CancellationToken cancellationToken)
    {
        var lines = await patterns
            .OrderByDescending(pattern => pattern.ChangedAt).ThenBy(pattern => pattern.Id)
            .Select(pattern => new
            {
                pattern,
                newest = context.Versions.Where(version => version.PatternId == pattern.Id)
                    .OrderByDescending(version => version.Number)
                    .Select(version => new NewestVersion(version.Number, version.Date, version.Hash, version.Format))
                    .FirstOrDefault(),
            })
            .ToListAsync(cancellationToken);
        var cards = new List<PatternCard>(lines.Count);
        foreach (var line in lines)
        {
            cards.Add(new PatternCard(
                new PatternId(line.pattern.Id),
                line.pattern.Title,
                line.pattern.ChangedAt,
                line.pattern.Revision,
                line.newest?.Number,
                line.newest?.Date,
                line.pattern.WithdrawnAt is not null,
                await OfAsync(context, line.pattern, line.newest, cancellationToken)));
        }

        return cards;
    }

    public static async Task<Standing> OfAsync(StoreContext context, PatternRow pattern, NewestVersion? newest, CancellationToken cancellationToken) => newest switch
    {
        null => Standing.Unpublished,
        _ when newest.Hash == pattern.Hash => Standing.Published,
        // one content in one format has one hash
        _ when newest.Format == pattern.Format => Standing.CorrectionWaiting,
        _ => await IsSameAsync(context, pattern, newest.Number, cancellationToken) ? Standing.Published : Standing.CorrectionWaiting,
    };

    private static async Task<bool> IsSameAsync(StoreContext context, PatternRow pattern, int number, CancellationToken cancellationToken)
    {
        var now = await History.CanonicalAsync(context, pattern, cancellationToken);
        var issued = await context.Versions.Where(version => version.PatternId == pattern.Id && version.Number == number).Select(version => version.Canonical).SingleAsync(cancellationToken);
        return DocumentContent.HashToday(now) == DocumentContent.HashToday(issued);
    }
}
