using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>A step, undo or redo as a client asks for it: once, however often it is sent, and only on the revision that it was made on.</summary>
internal sealed record Errand(PatternId Pattern, string Client, long Sequence, long BaseRevision)
{
    /// <summary>How many of its latest requests a client may send again.</summary>
    public const int KeptOfClient = 1000;

    /// <summary>How many of the latest requests of all clients together are remembered; a few more between two clearings.</summary>
    public const int KeptOfPattern = 10_000;

    /// <summary>Every so many revisions what is too old is cleared.</summary>
    public const int ClearedEvery = 64;

    private const int ClientMost = 64;

    /// <exception cref="ArgumentException">The client has no name, or a long one.</exception>
    public static Errand Of(PatternId pattern, string client, long sequence, long baseRevision) => string.IsNullOrWhiteSpace(client) || client.Length > ClientMost
        ? throw new ArgumentException($"\"{client}\" cannot name a client.", nameof(client))
        : new Errand(pattern, client, sequence, baseRevision);

    /// <summary>The one way in which a pattern's document changes. The act answers null when there is nothing to do.</summary>
    /// <param name="own">The pattern, if the maker has it.</param>
    public async Task<SaveResult> CarryOutAsync(
        StoreContext context, IQueryable<PatternRow> own, Func<PatternRow, Task<PatternState?>> act, CancellationToken cancellationToken)
    {
        if (await own.SingleOrDefaultAsync(cancellationToken) is not { } pattern)
        {
            return new SaveResult.Missing();
        }

        if (await context.CarriedOut.FindAsync([Pattern.Value, Client, Sequence], cancellationToken) is { } before)
        {
            return new SaveResult.HadAlready(before.Revision, await History.StateAsync(context, pattern, cancellationToken));
        }

        if (pattern.Revision != BaseRevision)
        {
            return new SaveResult.Moved(await History.StateAsync(context, pattern, cancellationToken));
        }

        if (await act(pattern) is not { } now)
        {
            return new SaveResult.Nothing(await History.StateAsync(context, pattern, cancellationToken));
        }

        await ForgetAsync(context, now.Revision, cancellationToken);
        context.CarriedOut.Add(new CarriedOutRow { PatternId = Pattern.Value, Client = Client, Sequence = Sequence, Revision = now.Revision });
        return new SaveResult.Saved(now);
    }

    // A client pushes out its own old requests only. Old ones of others go by revision, so that clients without number do not fill the store.
    private async Task ForgetAsync(StoreContext context, long revision, CancellationToken cancellationToken)
    {
        var ofPattern = context.CarriedOut.Where(done => done.PatternId == Pattern.Value);
        await ofPattern.Where(done => done.Client == Client && done.Sequence <= Sequence - KeptOfClient).ExecuteDeleteAsync(cancellationToken);
        if (revision % ClearedEvery == 0)
        {
            await ofPattern.Where(done => done.Revision <= revision - KeptOfPattern).ExecuteDeleteAsync(cancellationToken);
        }
    }
}
