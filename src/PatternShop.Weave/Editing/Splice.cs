namespace PatternShop.Weave;

/// <summary>Threads taken out of a motif at one place, and others put in there: rows or ends, numbered from 1.</summary>
/// <param name="At">The first thread that goes, and the first that comes.</param>
/// <param name="Removed">How many go.</param>
/// <param name="Added">How many come; they are under.</param>
internal readonly record struct Splice(int At, int Removed, int Added)
{
    /// <summary>So many threads become so many others, at the far end or at the near one.</summary>
    public static Splice Between(int before, int after, bool atFarEnd) => after >= before
        ? new Splice(atFarEnd ? before + 1 : 1, 0, after - before)
        : new Splice(atFarEnd ? after + 1 : 1, before - after, 0);

    /// <summary>The new number of a thread; null where it is gone.</summary>
    public int? NumberOf(int thread) => thread < At ? thread : thread < At + Removed ? null : thread - Removed + Added;

    /// <summary>The motif with its rows spliced.</summary>
    public BitGrid Rows(BitGrid motif)
    {
        var from = this;
        return BitGrid.Create(motif.Rows - Removed + Added, motif.Columns, (row, end) => from.SourceOf(row) is { } source && motif[source, end]);
    }

    /// <summary>The motif with its ends spliced.</summary>
    public BitGrid Ends(BitGrid motif)
    {
        var from = this;
        return BitGrid.Create(motif.Rows, motif.Columns - Removed + Added, (row, end) => from.SourceOf(end) is { } source && motif[row, source]);
    }

    /// <summary>
    /// The offset of the width plan: the pattern goes on beginning at the same end. Where that end is gone it begins at the next one, and where
    /// it began at the motif's first end it still does.
    /// </summary>
    /// <param name="offset">The offset before.</param>
    /// <param name="ends">Ends of the motif now.</param>
    public int Offset(int offset, int ends) => offset == 0 ? 0 : NumberOf(offset + 1) is { } number ? number - 1 : (At - 1) % ends;

    // which thread, from 0, stands at a place now; null for one that has come
    private int? SourceOf(int place) => place < At - 1 ? place : place < At - 1 + Added ? null : place - Added + Removed;
}
