namespace PatternShop.Weave;

/// <summary>Puts new rows into the motif, every cell under; the row plan and what the maker bound to single rows follow.</summary>
/// <param name="At">The number that the first of them has, from 1 to one more than there are rows.</param>
/// <param name="Count">How many, at least 1.</param>
public sealed record InsertRows(int At, int Count) : Edit
{
    private protected override EditResult Change(PatternDocument document) =>
        ThreadProblems.Place(At, Count, document.Motif.Rows, "row") ?? MotifFit.Spliced(document, new Splice(At, 0, Count), default);
}

/// <summary>Takes rows out of the motif; the row plan and what the maker bound to single rows follow.</summary>
/// <param name="First">The first of them, from 1.</param>
/// <param name="Count">How many, at least 1.</param>
public sealed record RemoveRows(int First, int Count) : Edit
{
    private protected override EditResult Change(PatternDocument document) =>
        ThreadProblems.Stretch(First, Count, document.Motif.Rows, "row") ?? MotifFit.Spliced(document, new Splice(First, Count, 0), default);
}

/// <summary>Puts new ends into the motif, every cell under. The pattern goes on beginning at the same end, or at the first one if it did.</summary>
/// <param name="At">The number that the first of them has, from 1 to one more than there are ends.</param>
/// <param name="Count">How many, at least 1.</param>
public sealed record InsertEnds(int At, int Count) : Edit
{
    private protected override EditResult Change(PatternDocument document) =>
        ThreadProblems.Place(At, Count, document.Motif.Columns, "end") ?? MotifFit.Spliced(document, default, new Splice(At, 0, Count));
}

/// <summary>Takes ends out of the motif. The pattern goes on beginning at the same end or, where that is gone, at the next one.</summary>
/// <param name="First">The first of them, from 1.</param>
/// <param name="Count">How many, at least 1.</param>
public sealed record RemoveEnds(int First, int Count) : Edit
{
    private protected override EditResult Change(PatternDocument document) =>
        ThreadProblems.Stretch(First, Count, document.Motif.Columns, "end") ?? MotifFit.Spliced(document, default, new Splice(First, Count, 0));
}

internal static class ThreadProblems
{
    public static EditResult.Refused? Place(int at, int count, int threads, string thread) => at < 1 || at > threads + 1 || count < 1
        ? Refused($"{Plain.Count(count, thread)} cannot come before {thread} {Plain.Number(at)}: the motif has {Plain.Count(threads, thread)}.", $"Choose a place from 1 to {Plain.Number(threads + 1)}.")
        : null;

    public static EditResult.Refused? Stretch(int first, int count, int threads, string thread) => first < 1 || count < 1 || first > threads || count > threads - first + 1
        ? Refused($"The motif has {Plain.Count(threads, thread)}: no {Plain.Count(count, thread)} from {Plain.Number(first)} on.", $"Choose from 1 to {Plain.Number(threads)}.")
        : count == threads
            ? Refused($"No {thread} would be left.", $"Leave one {thread}, or make it under.")
            : null;

    private static EditResult.Refused Refused(string what, string remedy) => new([new Problem(EditProblemCodes.NoSuchThreads, "/motif", 0, 0, what, remedy)]);
}
