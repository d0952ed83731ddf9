using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>
/// What makers do with their own patterns. Every method takes the maker first; patterns of others answer as if they did
/// not exist. What was reported as saved is on disk; every method throws <see cref="StoreException"/> when the database
/// could not do it.
/// </summary>
public sealed class Workroom
{
    private const int StepNameMost = 200;
    private readonly StoreAccess _store;
    private readonly TimeProvider _time;
    private readonly RandomNumberGenerator _random;

    internal Workroom(StoreAccess store, TimeProvider time, RandomNumberGenerator random)
    {
        _store = store;
        _time = time;
        _random = random;
    }

    /// <summary>Makes a pattern at revision 1, with those photos that it names and the maker has with another pattern.</summary>
    /// <exception cref="ArgumentException">The document breaks a rule.</exception>
    public Task<PatternId> CreateAsync(MakerId maker, PatternDocument document, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(document);
        var pattern = NewPattern.Of(document);
        return _store.WriteAsync(
            async context =>
            {
                var id = await pattern.AddAsync(context, maker, _time.GetUtcNow(), _random, cancellationToken);
                await PhotoDesk.CopyAsync(context, maker, id, document, cancellationToken);
                return id;
            },
            cancellationToken);
    }

    /// <summary>Makes a pattern of its own from how another of the maker's stands now, with the photos that it names; null when they have no such pattern.</summary>
    /// <param name="title">From the title to that of the new pattern.</param>
    /// <exception cref="ArgumentException">The new title breaks a rule.</exception>
    public Task<PatternId?> DuplicateAsync(MakerId maker, PatternId id, Func<string, string> title, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(title);
        return _store.WriteAsync(
            async context =>
            {
                if (await Own(context, maker, id).SingleOrDefaultAsync(cancellationToken) is not { } pattern)
                {
                    return null;
                }

                var document = (await History.StateAsync(context, pattern, cancellationToken)).Document;
                var copy = await NewPattern.Of(document with { Title = title(document.Title) }).AddAsync(context, maker, _time.GetUtcNow(), _random, cancellationToken);
                await PhotoDesk.CopyAsync(context, maker, copy, document, cancellationToken);
                return (PatternId?)copy;
            },
            cancellationToken);
    }

    /// <summary>The maker's patterns, the one changed last first.</summary>
    public Task<IReadOnlyList<PatternCard>> ListAsync(MakerId maker, CancellationToken cancellationToken = default) => _store.ReadAsync<IReadOnlyList<PatternCard>>(
        context => Standings.ListAsync(context, context.Patterns.Where(pattern => pattern.MakerId == maker.Value), cancellationToken),
        cancellationToken);

    public Task<OpenPattern?> OpenAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context =>
        {
            if (await Own(context, maker, id).SingleOrDefaultAsync(cancellationToken) is not { } pattern)
            {
                return null;
            }

            var versions = await context.Versions
                .Where(version => version.PatternId == pattern.Id)
                .OrderByDescending(version => version.Number)
                .Select(version => new { version.Format, Card = new VersionCard(version.Number, version.Date, version.Note, version.Hash, version.IssuedAt) { Kind = version.Kind } })
                .ToListAsync(cancellationToken);
            var state = await History.StateAsync(context, pattern, cancellationToken);
            var newest = versions is [var first, ..] ? new NewestVersion(first.Card.Number, first.Card.Date, first.Card.Hash, first.Format) : null;
            var standing = await Standings.OfAsync(context, pattern, newest, cancellationToken);
            return new OpenPattern(id, state, pattern.WithdrawnAt is not null, standing, [.. versions.Select(version => version.Card)]);
        },
        cancellationToken);

    /// <summary>Takes a step, once however often it is sent.</summary>
    /// <exception cref="ArgumentException">The client or the name of the step is empty or too long.</exception>
    public async Task<SaveResult> SaveAsync(MakerId maker, PatternId id, StepRequest step, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(step);
        if (string.IsNullOrWhiteSpace(step.Name) || step.Name.Length > StepNameMost)
        {
            throw new ArgumentException("The step has no name, or a long one.", nameof(step));
        }

        if (DocumentRules.Check(step.Document) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        var packed = PackedDocument.Of(step.Document);
        return await CarryOutAsync(maker, Errand.Of(id, step.Client, step.Sequence, step.BaseRevision), async (context, pattern) =>
        {
            await History.AppendAsync(context, pattern, step.Name, packed, _time.GetUtcNow(), cancellationToken);
            return new PatternState(pattern.Revision, step.Document, step.Name, null);
        }, cancellationToken);
    }

    /// <summary>Whether a step, an undo or a redo was carried out under this client and sequence.</summary>
    public Task<bool> CarriedOutAsync(MakerId maker, PatternId id, string client, long sequence, CancellationToken cancellationToken = default) => _store.ReadAsync(
        context => context.CarriedOut.AnyAsync(
            done => done.PatternId == id.Value && done.Client == client && done.Sequence == sequence && Own(context, maker, id).Any(),
            cancellationToken),
        cancellationToken);

    /// <summary>Takes the last step back, once however often it is sent.</summary>
    public Task<SaveResult> UndoAsync(MakerId maker, PatternId id, string client, long sequence, long baseRevision, CancellationToken cancellationToken = default) =>
        MoveAsync(maker, Errand.Of(id, client, sequence, baseRevision), -1, cancellationToken);

    /// <summary>Brings the step back that was undone last, once however often it is sent.</summary>
    public Task<SaveResult> RedoAsync(MakerId maker, PatternId id, string client, long sequence, long baseRevision, CancellationToken cancellationToken = default) =>
        MoveAsync(maker, Errand.Of(id, client, sequence, baseRevision), 1, cancellationToken);

    /// <summary>The number that the next version will have, from 1; null when the maker has no such pattern.</summary>
    public Task<int?> NextNumberAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context => await Own(context, maker, id).AnyAsync(cancellationToken) ? await NextAsync(context, id, cancellationToken) : (int?)null,
        cancellationToken);

    /// <summary>The document of a version of the maker's own, withdrawn or not; null when there is none.</summary>
    public Task<PatternDocument?> IssuedAsync(MakerId maker, PatternId id, int number, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context => await context.Versions
            .Where(version => version.PatternId == id.Value && version.Number == number && Own(context, maker, id).Any())
            .Select(version => version.Canonical)
            .SingleOrDefaultAsync(cancellationToken) is { } canonical
            ? DocumentContent.Read(canonical)
            : null,
        cancellationToken);

    /// <summary>Makes a version that will never change. A withdrawn pattern stays withdrawn.</summary>
    /// <exception cref="ArgumentException">Hash, bytes and files do not fit together, or are not of the present document.</exception>
    public async Task<IssueResult> IssueAsync(MakerId maker, PatternId id, IssueRequest request, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        Issuing.Require(request);
        return Issuing.Check(request) is { Count: > 0 } problems
            ? new IssueResult.Refused(problems)
            : await _store.WriteAsync(context => IssueAsync(context, maker, id, request, cancellationToken), cancellationToken);
    }

    /// <summary>Hides everything that was issued of a pattern. False when the maker has none such that was issued.</summary>
    public Task<bool> WithdrawAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) =>
        WithdrawAsync(maker, id, _time.GetUtcNow(), cancellationToken);

    /// <summary>Shows again what was withdrawn. False when the maker has no such pattern that was issued.</summary>
    public Task<bool> RestoreAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) =>
        WithdrawAsync(maker, id, null, cancellationToken);

    /// <summary>
    /// Throws a pattern away of which nothing was ever issued: from now on it answers as if it did not exist, and for <see cref="Deleted.Kept"/>
    /// it can be brought back. False when there is none such.
    /// </summary>
    public Task<bool> DeleteAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) => _store.WriteAsync(
        async context => await Own(context, maker, id)
            .Where(pattern => !context.Versions.Any(version => version.PatternId == pattern.Id))
            .ExecuteUpdateAsync(set => set.SetProperty(pattern => pattern.DeletedAt, _time.GetUtcNow()), cancellationToken) == 1,
        cancellationToken);

    /// <summary>The maker's patterns that were thrown away and can be brought back, the one thrown away last first.</summary>
    public Task<IReadOnlyList<DeletedCard>> DeletedAsync(MakerId maker, CancellationToken cancellationToken = default) => _store.ReadAsync<IReadOnlyList<DeletedCard>>(
        async context => await Deleted.Of(context, maker, _time.GetUtcNow())
            .OrderByDescending(pattern => pattern.DeletedAt).ThenBy(pattern => pattern.Id)
            .Select(pattern => new DeletedCard(new PatternId(pattern.Id), pattern.Title, pattern.Revision, pattern.DeletedAt!.Value, pattern.DeletedAt!.Value + Deleted.Kept))
            .ToListAsync(cancellationToken),
        cancellationToken);

    /// <summary>The document of a pattern that was thrown away and can be brought back; null when there is none such.</summary>
    public Task<PatternDocument?> DeletedDocumentAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context => await Deleted.Of(context, maker, _time.GetUtcNow()).SingleOrDefaultAsync(pattern => pattern.Id == id.Value, cancellationToken) is { } pattern
            ? (await History.StateAsync(context, pattern, cancellationToken)).Document
            : null,
        cancellationToken);

    /// <summary>Brings a pattern back as it was when it was thrown away, its steps and photos with it. False when there is none such any more.</summary>
    public Task<bool> BringBackAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) => _store.WriteAsync(
        async context => await Deleted.Of(context, maker, _time.GetUtcNow())
            .Where(pattern => pattern.Id == id.Value)
            .ExecuteUpdateAsync(set => set.SetProperty(pattern => pattern.DeletedAt, (DateTimeOffset?)null), cancellationToken) == 1,
        cancellationToken);

    private static IQueryable<PatternRow> Own(StoreContext context, MakerId maker, PatternId id) =>
        context.Patterns.Where(pattern => pattern.Id == id.Value && pattern.MakerId == maker.Value);

    private static async Task<int> NextAsync(StoreContext context, PatternId id, CancellationToken cancellationToken) =>
        1 + (await context.Versions.Where(version => version.PatternId == id.Value).MaxAsync(version => (int?)version.Number, cancellationToken) ?? 0);

    private Task<SaveResult> MoveAsync(MakerId maker, Errand errand, int by, CancellationToken cancellationToken) =>
        CarryOutAsync(maker, errand, (context, pattern) => History.MoveAsync(context, pattern, by, _time.GetUtcNow(), cancellationToken), cancellationToken);

    private Task<SaveResult> CarryOutAsync(MakerId maker, Errand errand, Func<StoreContext, PatternRow, Task<PatternState?>> act, CancellationToken cancellationToken) =>
        _store.WriteAsync(
            context => errand.CarryOutAsync(context, Own(context, maker, errand.Pattern), pattern => act(context, pattern), cancellationToken),
            cancellationToken);

    private async Task<IssueResult> IssueAsync(StoreContext context, MakerId maker, PatternId id, IssueRequest request, CancellationToken cancellationToken)
    {
        if (await Own(context, maker, id).SingleOrDefaultAsync(cancellationToken) is not { } pattern)
        {
            return new IssueResult.Missing();
        }

        var now = await History.StateAsync(context, pattern, cancellationToken);
        if (pattern.Revision != request.BaseRevision)
        {
            return new IssueResult.Moved(now);
        }

        var next = await NextAsync(context, id, cancellationToken);
        if (request.Number != next)
        {
            return new IssueResult.NumberTaken(next);
        }

        Issuing.RequireSame(request, now.Document);
        var (photos, problems) = await IssuedPhotos.OfAsync(context, pattern.Id, now.Document, cancellationToken);
        if (problems.Count > 0)
        {
            return new IssueResult.Refused(problems);
        }

        await Issuing.AddAsync(context, pattern, request with { Files = [.. request.Files, .. photos] }, _time.GetUtcNow(), cancellationToken);
        // equal content may have been stored in the words of an older format
        (pattern.Hash, pattern.Format) = (request.Hash, PatternWriter.Format);
        return new IssueResult.Issued(request.Number);
    }

    private Task<bool> WithdrawAsync(MakerId maker, PatternId id, DateTimeOffset? at, CancellationToken cancellationToken) => _store.WriteAsync(
        async context => await Own(context, maker, id)
            .Where(pattern => context.Versions.Any(version => version.PatternId == pattern.Id))
            .ExecuteUpdateAsync(set => set.SetProperty(pattern => pattern.WithdrawnAt, at), cancellationToken) == 1,
        cancellationToken);
}
