using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>
/// What readers have: patterns that were issued and are not withdrawn. Of a withdrawn pattern only <see cref="FindAsync"/>
/// tells that there was one (its page answers 410); its versions and files answer as if they did not exist (404).
/// </summary>
public sealed class PublicShelf
{
    private readonly StoreAccess _store;

    internal PublicShelf(StoreAccess store) => _store = store;

    /// <summary>The shop front: every visible pattern with its newest version, the one issued last first.</summary>
    public Task<IReadOnlyList<ShelfCard>> ListAsync(CancellationToken cancellationToken = default) => _store.ReadAsync<IReadOnlyList<ShelfCard>>(
        async context => await (
            from version in Visible(context)
            where version.Number == context.Versions.Where(other => other.PatternId == version.PatternId).Max(other => other.Number)
            join pattern in context.Patterns on version.PatternId equals pattern.Id
            join maker in context.Makers on pattern.MakerId equals maker.Id
            orderby version.IssuedAt descending, version.PatternId
            select new ShelfCard(new PatternId(pattern.Id), version.Title, maker.StudioName, maker.Handle, version.Number, version.Date, version.Canonical))
            .ToListAsync(cancellationToken),
        cancellationToken);

    /// <summary>A pattern with all its versions; null when nothing of it was ever issued.</summary>
    public Task<ShelfPattern?> FindAsync(PatternId id, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context =>
        {
            var versions = await context.Versions
                .Where(version => version.PatternId == id.Value)
                .OrderByDescending(version => version.Number)
                .Select(version => new { version.Title, Line = new ShelfVersion(version.Number, version.Date, version.Note, version.Hash, version.Kind) })
                .ToListAsync(cancellationToken);
            if (versions.Count == 0)
            {
                return null;
            }

            var about = await (
                from pattern in context.Patterns
                where pattern.Id == id.Value
                join maker in context.Makers on pattern.MakerId equals maker.Id
                select new { maker.StudioName, maker.Handle, Withdrawn = pattern.WithdrawnAt != null })
                .SingleAsync(cancellationToken);
            return new ShelfPattern(id, versions[0].Title, about.StudioName, about.Handle, about.Withdrawn, about.Withdrawn ? [] : [.. versions.Select(version => version.Line)]);
        },
        cancellationToken);

    /// <summary>One version; null when there is none such, or the pattern is withdrawn.</summary>
    public Task<IssuedVersion?> VersionAsync(PatternId id, int number, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context =>
        {
            if (await Visible(context).SingleOrDefaultAsync(version => version.PatternId == id.Value && version.Number == number, cancellationToken) is not { } version)
            {
                return null;
            }

            var files = await context.VersionFiles
                .Where(file => file.PatternId == id.Value && file.Number == number && !file.Edition.StartsWith(IssuedPhotos.Edition))
                .OrderBy(file => file.Place)
                .Select(file => new ShelfFileCard(file.Edition, file.Name, file.MediaType, file.Hash, file.Size))
                .ToListAsync(cancellationToken);
            return new IssuedVersion(id, number, version.Date, version.Note, version.Title, _store.Intact(version.Hash, version.Canonical), version.Format, version.Hash, files)
            {
                Kind = version.Kind,
                Code = version.Code is { } code ? new CopyCode(code) : null,
                Photos = await PhotoDesk.Cards(context.Photos.Where(photo => photo.PatternId == id.Value && context.VersionFiles.Any(file =>
                    file.PatternId == id.Value && file.Number == number && file.Hash == photo.Hash && file.Edition.StartsWith(IssuedPhotos.Edition))))
                    .ToListAsync(cancellationToken),
                Mends = await ReportDesk.MendedAsync(context, version, cancellationToken),
            };
        },
        cancellationToken);

    /// <summary>A file by the hash of its bytes, under the name that the version issued last gives it; null when no visible version holds it.</summary>
    /// <exception cref="StoreException">What is stored is damaged.</exception>
    public async Task<ShelfFile?> FileAsync(string hash, CancellationToken cancellationToken = default) =>
        await FoundAsync(hash, cancellationToken) is { } file ? file with { Bytes = _store.Intact(hash, file.Bytes) } : null;

    private Task<ShelfFile?> FoundAsync(string hash, CancellationToken cancellationToken) => _store.ReadAsync(
        context => (
            from version in Visible(context)
            join held in context.VersionFiles on new { version.PatternId, version.Number } equals new { held.PatternId, held.Number }
            where held.Hash == hash
            join file in context.Files on held.Hash equals file.Hash
            orderby version.IssuedAt descending, version.PatternId, held.Place
            select new ShelfFile(held.Name, held.MediaType, file.Bytes))
            .FirstOrDefaultAsync(cancellationToken),
        cancellationToken);

    /// <summary>Which version a code on a sheet names, withdrawn or not; null when it names none.</summary>
    public Task<FoundCopy?> CopyAsync(CopyCode code, CancellationToken cancellationToken = default) => _store.ReadAsync(
        context => (
            from version in context.Versions
            where version.Code == code.Value
            join pattern in context.Patterns on version.PatternId equals pattern.Id
            select new FoundCopy(
                new PatternId(version.PatternId),
                version.Number,
                context.Versions.Where(other => other.PatternId == version.PatternId).Max(other => other.Number),
                pattern.WithdrawnAt != null))
            .SingleOrDefaultAsync(cancellationToken),
        cancellationToken);

    private static IQueryable<VersionRow> Visible(StoreContext context) =>
        context.Versions.Where(version => context.Patterns.Any(pattern => pattern.Id == version.PatternId && pattern.WithdrawnAt == null));
}
