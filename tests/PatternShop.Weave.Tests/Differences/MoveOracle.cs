using PatternShop.Tests.Shared;

namespace PatternShop.Weave.Tests;

/// <summary>
/// Moves between two versions worked out from the definitions, without a call into the engine. Whoever has woven so many rows has worked the
/// stitches that stand before the next row, and goes on with the row after the last one that stands for a row woven.
/// </summary>
internal sealed class MoveOracle
{
    private readonly IReadOnlyList<OracleRow> _old;
    private readonly IReadOnlyList<OracleRow> _new;
    private readonly IReadOnlyList<IReadOnlyDictionary<int, Side>> _sides;

    /// <param name="old">The version that somebody weaves.</param>
    /// <param name="new">The version in which they go on.</param>
    /// <param name="beside">The rows of both beside each other, in order, by their numbers.</param>
    public MoveOracle(PatternDocument old, PatternDocument @new, IEnumerable<(int? Old, int? New)> beside)
    {
        (_old, _new, _sides) = (Oracle.Rows(old), Oracle.Rows(@new), Oracle.Sides(old));
        Rows = beside.Select(row => new RowPair(row.Old, row.New, FateOf(row.Old, row.New))).ToSequence();
    }

    public int OldRows => _old.Count;

    public Sequence<RowPair> Rows { get; }

    /// <summary>All rows beside each other where it is known which row stands for which; new ones stand before the row that follows them.</summary>
    public static IReadOnlyList<(int? Old, int? New)> Beside(IReadOnlyList<int?> newOf, int newRows)
    {
        var rows = new List<(int? Old, int? New)>();
        var told = 0;
        foreach (var (at, number) in newOf.Index())
        {
            for (; told + 1 < number; told++)
            {
                rows.Add((null, told + 1));
            }

            rows.Add((at + 1, number));
            told = number ?? told;
        }

        for (; told < newRows; told++)
        {
            rows.Add((null, told + 1));
        }

        return rows;
    }

    public MovedPlace Move(int woven)
    {
        var behind = woven == 0 ? 0 : Rows.ToList().FindIndex(row => row.Old == woven) + 1;
        var next = Rows.Take(behind).Select(row => row.New ?? 0).DefaultIfEmpty(0).Max() + 1;
        var row = next <= _new.Count ? _new[next - 1] : null;
        Side? now = row is not null && _sides[woven].TryGetValue(row.Weft, out var side) ? side : null;
        return new MovedPlace(
            next,
            Rows.Take(behind).Where(pair => pair.Fate != RowFate.Same).ToSequence(),
            Rows.Skip(behind).Where(pair => pair.Fate != RowFate.Same).ToSequence(),
            now,
            row?.From);
    }

    private RowFate FateOf(int? before, int? after)
    {
        if (before is not { } a || after is not { } b)
        {
            return before is null ? RowFate.Inserted : RowFate.Removed;
        }

        var (x, y) = (_old[a - 1], _new[b - 1]);
        return x.From == y.From && x.Weft == y.Weft && x.Runs.SequenceEqual(y.Runs) ? RowFate.Same : RowFate.Changed;
    }
}
