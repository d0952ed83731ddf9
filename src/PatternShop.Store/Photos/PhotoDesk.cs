using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>
/// Photos of patterns that nobody but their maker, and whoever has the address of a preview, can see. Issuing puts those that the
/// document names on the shelf. A photo never changes; it goes only with a pattern of which nothing was issued.
/// </summary>
public sealed class PhotoDesk
{
    /// <summary>Photos of one pattern that are kept: undo may bring back any of them.</summary>
    public const int Most = 200;

    private readonly StoreAccess _store;
    private readonly TimeProvider _time;

    internal PhotoDesk(StoreAccess store, TimeProvider time) => (_store, _time) = (store, time);

    /// <summary>Keeps a photo of a pattern.</summary>
    public Task<KeepResult> KeepAsync(MakerId maker, PatternId id, PictureFile large, PictureFile small, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(large);
        ArgumentNullException.ThrowIfNull(small);
        var row = new PhotoRow
        {
            PatternId = id.Value,
            Hash = PatternWriter.Hash(large.Bytes),
            Width = large.Width,
            Height = large.Height,
            Large = large.Bytes,
            SmallHash = PatternWriter.Hash(small.Bytes),
            SmallWidth = small.Width,
            SmallHeight = small.Height,
            Small = small.Bytes,
            KeptAt = _time.GetUtcNow(),
        };
        return _store.WriteAsync(context => KeepAsync(context, Owns(context, maker, id), row, cancellationToken), cancellationToken);
    }

    /// <summary>The photos that are kept of a maker's pattern, whether its document names them or not; null when they have no such pattern.</summary>
    public Task<IReadOnlyList<PhotoCard>?> ListAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context => await Owns(context, maker, id).AnyAsync(cancellationToken)
            ? (IReadOnlyList<PhotoCard>?)await Cards(context.Photos.Where(photo => photo.PatternId == id.Value)).ToListAsync(cancellationToken)
            : null,
        cancellationToken);

    /// <summary>The bytes of a picture of a maker's pattern, large or small, by their hash; null when there is none such.</summary>
    public Task<byte[]?> FindAsync(MakerId maker, PatternId id, string hash, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context => await Owns(context, maker, id).AnyAsync(cancellationToken) ? await BytesAsync(context, id.Value, hash, cancellationToken) : null,
        cancellationToken);

    /// <summary>The photos that a preview shows; empty when there is no such preview.</summary>
    public Task<IReadOnlyList<PhotoCard>> PreviewedAsync(string secret, CancellationToken cancellationToken = default) => _store.ReadAsync<IReadOnlyList<PhotoCard>>(
        async context => await PreviewedPatternAsync(context, secret, cancellationToken) is { } pattern
            ? await NamedAsync(context, pattern, cancellationToken)
            : [],
        cancellationToken);

    /// <summary>The bytes of a picture that a preview shows; null when it shows none such.</summary>
    public Task<byte[]?> PreviewedAsync(string secret, string hash, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context => await PreviewedPatternAsync(context, secret, cancellationToken) is { } pattern
            && (await NamedAsync(context, pattern, cancellationToken)).Any(card => card.Hash == hash || card.SmallHash == hash)
            ? await BytesAsync(context, pattern.Id, hash, cancellationToken)
            : null,
        cancellationToken);

    internal static IQueryable<PhotoCard> Cards(IQueryable<PhotoRow> photos) => photos.Select(photo =>
        new PhotoCard(photo.Hash, photo.Width, photo.Height, photo.SmallHash, photo.SmallWidth, photo.SmallHeight));

    /// <summary>Gives a new pattern the photos that its document names, from wherever among the maker's patterns they are, those thrown away included.</summary>
    internal static async Task CopyAsync(StoreContext context, MakerId maker, PatternId to, PatternDocument document, CancellationToken cancellationToken)
    {
        var named = document.Photos.Select(photo => photo.Hash).ToList();
        if (named.Count == 0)
        {
            return;
        }

        var patterns = context.Patterns.IgnoreQueryFilters().Where(pattern => pattern.MakerId == maker.Value).Select(pattern => pattern.Id);
        var photos = await context.Photos.AsNoTracking().Where(photo => named.Contains(photo.Hash) && patterns.Contains(photo.PatternId)).ToListAsync(cancellationToken);
        context.Photos.AddRange(photos.DistinctBy(photo => photo.Hash, StringComparer.Ordinal).Select(photo => new PhotoRow
        {
            PatternId = to.Value,
            Hash = photo.Hash,
            Width = photo.Width,
            Height = photo.Height,
            Large = photo.Large,
            SmallHash = photo.SmallHash,
            SmallWidth = photo.SmallWidth,
            SmallHeight = photo.SmallHeight,
            Small = photo.Small,
            KeptAt = photo.KeptAt,
        }));
    }

    private static async Task<KeepResult> KeepAsync(StoreContext context, IQueryable<PatternRow> own, PhotoRow row, CancellationToken cancellationToken)
    {
        if (!await own.AnyAsync(cancellationToken))
        {
            return new KeepResult.Missing();
        }

        var of = context.Photos.Where(photo => photo.PatternId == row.PatternId);
        if (!await of.AnyAsync(photo => photo.Hash == row.Hash, cancellationToken))
        {
            if (await of.CountAsync(cancellationToken) >= Most)
            {
                return new KeepResult.Full(Most);
            }

            context.Photos.Add(row);
        }

        return new KeepResult.Kept(new PhotoCard(row.Hash, row.Width, row.Height, row.SmallHash, row.SmallWidth, row.SmallHeight));
    }

    private static async Task<IReadOnlyList<PhotoCard>> NamedAsync(StoreContext context, PatternRow pattern, CancellationToken cancellationToken)
    {
        var named = (await History.StateAsync(context, pattern, cancellationToken)).Document.Photos.Select(photo => photo.Hash).ToList();
        return await Cards(context.Photos.Where(photo => photo.PatternId == pattern.Id && named.Contains(photo.Hash))).ToListAsync(cancellationToken);
    }

    private static Task<PatternRow?> PreviewedPatternAsync(StoreContext context, string secret, CancellationToken cancellationToken)
    {
        var hash = Token.HashOf(secret);
        return context.Patterns.SingleOrDefaultAsync(pattern => context.Previews.Any(preview => preview.PatternId == pattern.Id && preview.SecretHash == hash), cancellationToken);
    }

    private async Task<byte[]?> BytesAsync(StoreContext context, string pattern, string hash, CancellationToken cancellationToken) =>
        await StoredAsync(context, pattern, hash, cancellationToken) is { } bytes ? _store.Intact(hash, bytes) : null;

    private static Task<byte[]?> StoredAsync(StoreContext context, string pattern, string hash, CancellationToken cancellationToken) => context.Photos
        .Where(photo => photo.PatternId == pattern && (photo.Hash == hash || photo.SmallHash == hash))
        .Select(photo => photo.Hash == hash ? photo.Large : photo.Small)
        .FirstOrDefaultAsync(cancellationToken);

    private static IQueryable<PatternRow> Owns(StoreContext context, MakerId maker, PatternId id) =>
        context.Patterns.Where(pattern => pattern.Id == id.Value && pattern.MakerId == maker.Value);
}
