using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>The documents of a pattern, one a step, and the cursor that says which is the present one.</summary>
internal static class History
{
    /// <summary>Steps that can be undone; a few more are kept, so that what is left never differs from what is gone.</summary>
    public const int Kept = 1000;

    // every so many steps the document is whole; those between are kept as what differs from it
    private const int Whole = 16;

    public static async Task<PatternState> StateAsync(StoreContext context, PatternRow pattern, CancellationToken cancellationToken) =>
        (await ReadAsync(context, pattern, cancellationToken)).State;

    /// <summary>Puts a step behind the present one. What had been undone is gone, and so is the oldest step when there are too many.</summary>
    public static async Task AppendAsync(StoreContext context, PatternRow pattern, string name, PackedDocument document, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var position = pattern.Cursor + 1;
        var oldest = WholeAt(Math.Max(0, position - Kept));
        await context.Steps
            .Where(step => step.PatternId == pattern.Id && (step.Position >= position || step.Position < oldest))
            .ExecuteDeleteAsync(cancellationToken);
        var content = await FoldAsync(context, pattern.Id, position, document.Content, cancellationToken);
        context.Steps.Add(new StepRow { PatternId = pattern.Id, Position = position, Name = name, TakenAt = now, Content = content });
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
        var canonical = await UnfoldAsync(context, pattern.Id, pattern.Cursor, present.Content!, cancellationToken);
        var (document, hash) = DocumentContent.ReadAndHash(canonical);
        var state = new PatternState(
            pattern.Revision,
            document,
            around.ContainsKey(pattern.Cursor - 1) ? present.Name : null,
            around.GetValueOrDefault(pattern.Cursor + 1)?.Name);
        return (state, hash);
    }

    /// <summary>The canonical bytes of the present document.</summary>
    public static async Task<byte[]> CanonicalAsync(StoreContext context, PatternRow pattern, CancellationToken cancellationToken) =>
        await UnfoldAsync(context, pattern.Id, pattern.Cursor, await ContentAsync(context, pattern.Id, pattern.Cursor, cancellationToken) ?? throw Lost(), cancellationToken);

    private static long WholeAt(long position) => position - (position % Whole);

    private static Task<byte[]?> ContentAsync(StoreContext context, string pattern, long position, CancellationToken cancellationToken) =>
        context.Steps.Where(step => step.PatternId == pattern && step.Position == position).Select(step => step.Content).SingleOrDefaultAsync(cancellationToken);

    // whole where there is nothing earlier, or where the difference would take no less
    private static async Task<byte[]> FoldAsync(StoreContext context, string pattern, long position, byte[] content, CancellationToken cancellationToken)
    {
        if (position == WholeAt(position) || await ContentAsync(context, pattern, WholeAt(position), cancellationToken) is not { } earlier || FoldedContent.IsFolded(earlier))
        {
            return content;
        }

        var folded = FoldedContent.Pack(DocumentContent.Unpack(content), DocumentContent.Unpack(earlier));
        return folded.Length < content.Length ? folded : content;
    }

    private static async Task<byte[]> UnfoldAsync(StoreContext context, string pattern, long position, byte[] content, CancellationToken cancellationToken) => FoldedContent.IsFolded(content)
        ? FoldedContent.Unpack(content, DocumentContent.Unpack(await ContentAsync(context, pattern, WholeAt(position), cancellationToken) ?? throw Lost()))
        : DocumentContent.Unpack(content);

    private static StoreException Lost() => new("A step of a pattern is missing in the database.");

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
