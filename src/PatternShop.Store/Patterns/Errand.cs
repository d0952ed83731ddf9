using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>A step, undo or redo as a client asks for it: once, however often it is sent, and only on the revision that it was made on.</summary>
internal sealed record Errand(PatternId Pattern, string Client, long Sequence, long BaseRevision)
{
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

        context.CarriedOut.Add(new CarriedOutRow { PatternId = Pattern.Value, Client = Client, Sequence = Sequence, Revision = now.Revision });
        return new SaveResult.Saved(now);
    }
}
