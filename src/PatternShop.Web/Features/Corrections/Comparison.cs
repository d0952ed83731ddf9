using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Two versions of a pattern beside each other.</summary>
/// <param name="Old">The piece of the older one.</param>
/// <param name="New">The piece of the newer one.</param>
/// <param name="Difference">Their rows; null where they are too long to be compared.</param>
/// <param name="Changes">The rows that differ, those together that changed alike.</param>
/// <param name="Facts">Counts and plan that differ.</param>
public sealed record Comparison(Piece Old, Piece New, PieceDifference? Difference, Sequence<ChangedRows> Changes, Sequence<FactChange> Facts)
{
    public static Comparison Of(Piece old, Piece @new, Wording words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var difference = PieceDifference.IsTooLong(old, @new) ? null : PieceDifference.Between(old, @new);
        return new Comparison(old, @new, difference, difference?.Changes() ?? [], words.FactChanges(old, @new));
    }

    /// <summary>Whether a weaver weaves otherwise: another row, or another plan or edge stitch between rows. Unknown counts as otherwise.</summary>
    public bool WeavesOtherwise => Difference is not { RowsDiffer: false } || !Old.Stitches.Equals(New.Stitches);

    /// <summary>Whether nothing that readers can see differs.</summary>
    public bool IsNone => !WeavesOtherwise && Facts.Count == 0;
}

/// <summary>The comparisons that were asked for last. Versions never change, so neither do these.</summary>
internal sealed class ComparisonShelf(Wording words)
{
    private const long MostRows = 400_000;
    private readonly BoundedShelf<Comparison> _shelf = new(MostRows, static kept => 64L + kept.Old.Rows.Count + kept.New.Rows.Count);

    /// <param name="old">The older piece and the hash of its document.</param>
    /// <param name="new">The newer piece and the hash of its document.</param>
    public Comparison Of((Piece Piece, string Hash) old, (Piece Piece, string Hash) @new)
    {
        var key = $"{old.Hash}/{@new.Hash}";
        if (_shelf.TryGet(key, out var kept))
        {
            return kept!;
        }

        var made = Comparison.Of(old.Piece, @new.Piece, words);
        _shelf.Put(key, made);
        return made;
    }
}
