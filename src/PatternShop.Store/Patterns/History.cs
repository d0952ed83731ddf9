using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>The documents of a pattern, one a step, and the cursor that says which is the present one.</summary>
internal static class History
{
    /// <summary>Steps that can be undone.</summary>
    public const int Kept = 500;

    public static async Task<PatternState> StateAsync(StoreContext context, PatternRow pattern, CancellationToken cancellationToken) =>
        (await ReadAsync(context, pattern, cancellationToken)).State;

    /// <summary>Puts a step behind the present one. What had been undone is gone, and so is the oldest step when there are too many.</summary>
    public static async Task AppendAsync(StoreContext context, PatternRow pattern, string name, PackedDocument document, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var position = pattern.Cursor + 1;
        await context.Steps
            .Where(step => step.PatternId == pattern.Id && (step.Position >= position || step.Position < position - Kept))
            .ExecuteDeleteAsync(cancellationToken);
        context.Steps.Add(new StepRow { PatternId = pattern.Id, Position = position, Name = name, TakenAt = now, Content = document.Content });
        Show(pattern, position, document.Title, document.Hash, now);
    }

    /// <summary>Moves the cursor one step back (-1) or forth (1). Null when there is no step there.</summary>
    public static async Task<PatternState?> MoveAsync(StoreContext context, PatternRow pattern, int by, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var position = pattern.Cursor + by;
        if (!await context.Steps.AnyAsync(step => step.PatternId == pattern.Id && step.Position == position, cancellationToken))
        {
            return null;
        }

        pattern.Cursor = position;
        var (state, hash) = await ReadAsync(context, pattern, cancellationToken);
        Show(pattern, position, state.Document.Title, hash, now);
        return state with { Revision = pattern.Revision };
    }

    private static async Task<(PatternState State, string Hash)> ReadAsync(StoreContext context, PatternRow pattern, CancellationToken cancellationToken)
    {
        var around = await context.Steps
            .Where(step => step.PatternId == pattern.Id && step.Position >= pattern.Cursor - 1 && step.Position <= pattern.Cursor + 1)
            .Select(step => new { step.Position, step.Name, Content = step.Position == pattern.Cursor ? step.Content : null })
            .ToDictionaryAsync(step => step.Position, cancellationToken);
        var present = around[pattern.Cursor];
        var canonical = DocumentContent.Unpack(present.Content!);
        var (document, hash) = DocumentContent.ReadAndHash(canonical);
        var state = new PatternState(
            pattern.Revision,
            document,
            around.ContainsKey(pattern.Cursor - 1) ? present.Name : null,
            around.GetValueOrDefault(pattern.Cursor + 1)?.Name);
        return (state, hash);
    }

    private static void Show(PatternRow pattern, long position, string title, string hash, DateTimeOffset now)
    {
        pattern.Cursor = position;
        pattern.Title = title;
        pattern.Hash = hash;
        pattern.Format = PatternWriter.Format;
        pattern.Revision++;
        pattern.ChangedAt = now;
    }
}
