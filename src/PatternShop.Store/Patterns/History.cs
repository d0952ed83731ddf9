using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>The documents of a pattern, one a step, and the cursor that says which is the present one.</summary>
internal static class History
{
    /// <summary>Steps that can be undone.</summary>
    public const int Kept = 500;

    public static async Task<PatternState> StateAsync(StoreContext context, PatternRow pattern, CancellationToken cancellationToken)
    {
        var around = await context.Steps
            .Where(step => step.PatternId == pattern.Id && step.Position >= pattern.Cursor - 1 && step.Position <= pattern.Cursor + 1)
            .Select(step => new { step.Position, step.Name, Content = step.Position == pattern.Cursor ? step.Content : null })
            .ToDictionaryAsync(step => step.Position, cancellationToken);
        var present = around[pattern.Cursor];
        return new PatternState(
            pattern.Revision,
            DocumentContent.Read(present.Content!),
            around.ContainsKey(pattern.Cursor - 1) ? present.Name : null,
            around.GetValueOrDefault(pattern.Cursor + 1)?.Name);
    }

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

    /// <summary>Moves the cursor one step back (-1) or forth (1). False when there is no step there.</summary>
    public static async Task<bool> MoveAsync(StoreContext context, PatternRow pattern, int by, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var position = pattern.Cursor + by;
        var content = await context.Steps
            .Where(step => step.PatternId == pattern.Id && step.Position == position)
            .Select(step => step.Content)
            .SingleOrDefaultAsync(cancellationToken);
        if (content is null)
        {
            return false;
        }

        var document = PackedDocument.Of(DocumentContent.Read(content));
        Show(pattern, position, document.Title, document.Hash, now);
        return true;
    }

    private static void Show(PatternRow pattern, long position, string title, string hash, DateTimeOffset now)
    {
        pattern.Cursor = position;
        pattern.Title = title;
        pattern.Hash = hash;
        pattern.Revision++;
        pattern.ChangedAt = now;
    }
}
