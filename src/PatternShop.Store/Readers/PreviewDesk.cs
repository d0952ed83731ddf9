using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>A pattern that is not issued, as whoever has its private address sees it.</summary>
public sealed record PreviewedPattern(PatternId Id, PatternDocument Document, string StudioName);

/// <summary>Private addresses at which a maker looks at a pattern before it is issued: one a pattern, as long as the maker says.</summary>
public sealed class PreviewDesk
{
    private readonly StoreAccess _store;
    private readonly TimeProvider _time;
    private readonly RandomNumberGenerator _random;

    internal PreviewDesk(StoreAccess store, TimeProvider time, RandomNumberGenerator random) => (_store, _time, _random) = (store, time, random);

    /// <summary>Begins a preview and ends the one before. Answers its secret, which is kept nowhere; null when the maker has no such pattern.</summary>
    public Task<string?> BeginAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) => _store.WriteAsync(
        async context =>
        {
            if (!await Owns(context, maker, id).AnyAsync(cancellationToken))
            {
                return null;
            }

            var secret = Token.Make(_random, Token.SecretLength);
            await context.Previews.Where(row => row.PatternId == id.Value).ExecuteDeleteAsync(cancellationToken);
            context.Previews.Add(new PreviewRow { PatternId = id.Value, SecretHash = Token.HashOf(secret), BeganAt = _time.GetUtcNow() });
            return secret;
        },
        cancellationToken);

    /// <summary>Ends the preview. False when the maker has no such pattern with one.</summary>
    public Task<bool> EndAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) => _store.WriteAsync(
        async context => await context.Previews
            .Where(row => row.PatternId == id.Value && Owns(context, maker, id).Any())
            .ExecuteDeleteAsync(cancellationToken) == 1,
        cancellationToken);

    /// <summary>When the preview began that a maker's pattern has; null when it has none.</summary>
    public Task<DateTimeOffset?> BeganAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) => _store.ReadAsync(
        context => context.Previews
            .Where(row => row.PatternId == id.Value && Owns(context, maker, id).Any())
            .Select(row => (DateTimeOffset?)row.BeganAt)
            .SingleOrDefaultAsync(cancellationToken),
        cancellationToken);

    /// <summary>The pattern behind a secret, as it stands now; null when there is none, or its preview has ended.</summary>
    public Task<PreviewedPattern?> FindAsync(string secret, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context =>
        {
            var hash = Token.HashOf(secret);
            var found = await (
                from preview in context.Previews
                where preview.SecretHash == hash
                join pattern in context.Patterns on preview.PatternId equals pattern.Id
                join maker in context.Makers on pattern.MakerId equals maker.Id
                select new { pattern, maker.StudioName })
                .SingleOrDefaultAsync(cancellationToken);
            return found is null
                ? null
                : new PreviewedPattern(new PatternId(found.pattern.Id), (await History.StateAsync(context, found.pattern, cancellationToken)).Document, found.StudioName);
        },
        cancellationToken);

    private static IQueryable<PatternRow> Owns(StoreContext context, MakerId maker, PatternId id) =>
        context.Patterns.Where(pattern => pattern.Id == id.Value && pattern.MakerId == maker.Value);
}
