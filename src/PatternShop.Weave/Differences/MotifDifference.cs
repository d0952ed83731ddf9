using System.Numerics;

namespace PatternShop.Weave;

/// <summary>What happens to rows of a motif.</summary>
public abstract record RowChange;

/// <summary>Rows that stay as they are.</summary>
public sealed record RowsKept(int Count) : RowChange;

/// <summary>Rows that go.</summary>
public sealed record RowsRemoved(int Count) : RowChange;

/// <summary>A row that takes the place of one row; Cells in the text form of a grid.</summary>
public sealed record RowChanged(string Cells) : RowChange;

/// <summary>A row that is new; Cells in the text form of a grid.</summary>
public sealed record RowInserted(string Cells) : RowChange;

/// <summary>The rows of a motif in order, as they change from one version to the next.</summary>
/// <param name="Changes">Every old row is kept, changed or removed by one of them.</param>
public sealed record MotifDifference(Sequence<RowChange> Changes)
{
    /// <summary>Which old motif row became which new one; rows from 0.</summary>
    public static Sequence<Pair> Align(BitGrid old, BitGrid @new)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(@new);
        return Alignment.Of(old.Rows, @new.Rows, (i, j) => Cost(old, i, @new, j));
    }

    /// <summary>The difference between two motifs.</summary>
    public static MotifDifference Between(BitGrid old, BitGrid @new)
    {
        var (before, after) = (GridText.Write(old), GridText.Write(@new));
        var changes = new List<RowChange>();
        foreach (var pair in Align(old, @new))
        {
            Add(changes, pair switch
            {
                { Old: { } i, New: { } j } => before[i] == after[j] ? new RowsKept(1) : new RowChanged(after[j]),
                { Old: not null } => new RowsRemoved(1),
                { New: { } j } => new RowInserted(after[j]),
                _ => throw new InvalidOperationException(),
            });
        }

        return new MotifDifference(changes.ToSequence());
    }

    /// <summary>The new motif, made of the old one.</summary>
    /// <exception cref="ArgumentException">The difference was not made from a motif with so many rows.</exception>
    public BitGrid Apply(BitGrid old)
    {
        var before = GridText.Write(old);
        var rows = new List<string>();
        var at = 0;
        foreach (var change in Changes)
        {
            var takes = change switch { RowsKept kept => kept.Count, RowsRemoved removed => removed.Count, RowChanged => 1, _ => 0 };
            if (at + takes > before.Count)
            {
                throw new ArgumentException("The difference belongs to a motif with more rows.", nameof(old));
            }

            rows.AddRange(change switch
            {
                RowsKept => before.Skip(at).Take(takes),
                RowChanged changed => [changed.Cells],
                RowInserted inserted => [inserted.Cells],
                _ => [],
            });
            at += takes;
        }

        return at == before.Count
            ? GridText.Read(rows)
            : throw new ArgumentException("The difference belongs to a motif with fewer rows.", nameof(old));
    }

    private static void Add(List<RowChange> changes, RowChange next)
    {
        switch (changes.LastOrDefault(), next)
        {
            case (RowsKept kept, RowsKept):
                changes[^1] = new RowsKept(kept.Count + 1);
                break;
            case (RowsRemoved removed, RowsRemoved):
                changes[^1] = new RowsRemoved(removed.Count + 1);
                break;
            default:
                changes.Add(next);
                break;
        }
    }

    // A changed row costs less than removing and inserting one, and the less the fewer of its cells change.
    private static int? Cost(BitGrid old, int i, BitGrid @new, int j)
    {
        if (old.Columns != @new.Columns)
        {
            return Alignment.Whole;
        }

        var a = old.RowWords(i);
        var b = @new.RowWords(j);
        var cells = 0;
        for (var word = 0; word < a.Length; word++)
        {
            cells += BitOperations.PopCount(a[word] ^ b[word]);
        }

        return cells == 0 ? 0 : (Alignment.Whole / 2) + (Alignment.Whole * cells / old.Columns);
    }
}
