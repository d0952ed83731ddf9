namespace PatternShop.Weave;

/// <summary>How a row of the weaving order fares from one version to the next.</summary>
public enum RowFate
{
    /// <summary>It reads the same from the same side.</summary>
    Same,

    /// <summary>It reads otherwise.</summary>
    Changed,

    /// <summary>It is new.</summary>
    Inserted,

    /// <summary>It is gone.</summary>
    Removed,
}

/// <summary>A row of the old weaving order beside the row of the new one that stands in its place; numbers from 1.</summary>
public readonly record struct RowPair(int? Old, int? New, RowFate Fate);

/// <summary>Where somebody who is in the middle of the old version goes on in the new one.</summary>
/// <param name="Next">Number of the next row to weave; one past the last when the piece is done.</param>
/// <param name="Passed">What changed among the rows already woven.</param>
/// <param name="ToCome">What changed among the rows to come.</param>
/// <param name="SideNow">The side at which the weft of the next row lies in the old version; null where nothing was worked with it yet, or at the end.</param>
/// <param name="SideNext">The side at which the next row starts in the new version; null at the end.</param>
public sealed record MovedPlace(int Next, Sequence<RowPair> Passed, Sequence<RowPair> ToCome, Side? SideNow, Side? SideNext)
{
    /// <summary>Whether the weft lies where the next row starts.</summary>
    public bool SideFits => SideNow is null || SideNext is null || SideNow == SideNext;
}

/// <summary>The weaving orders of two versions laid beside each other.</summary>
public sealed class PieceDifference
{
    private const long MostCompared = 4_000_000;
    private readonly Piece _old;
    private readonly Piece _new;

    private PieceDifference(Piece old, Piece @new, Sequence<RowPair> rows) => (_old, _new, Rows) = (old, @new, rows);

    /// <summary>Every row of both orders, in order.</summary>
    public Sequence<RowPair> Rows { get; }

    /// <summary>Whether the rows of the two differ for a weaver.</summary>
    public bool RowsDiffer => Rows.Any(row => row.Fate != RowFate.Same);

    /// <summary>
    /// Whether rows that are printed together are so many in both that laying them beside each other would take more than bounded time and
    /// memory.
    /// </summary>
    public static bool IsTooLong(Piece old, Piece @new)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(@new);
        return (long)old.Bands.Max(band => band.RowsEachTime) * @new.Bands.Max(band => band.RowsEachTime) > MostCompared;
    }

    /// <summary>
    /// Lays the orders beside each other. A row stands beside the one that comes of the same motif row (or is plain like it) at the same
    /// time through the same repeated rows, so that a row inserted into repeated rows is inserted once each time and nothing else moves.
    /// </summary>
    public static PieceDifference Between(Piece old, Piece @new)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(@new);
        var newOf = MotifDifference.Align(old.Document.Motif, @new.Document.Motif)
            .Where(pair => pair.Old is not null && pair.New is not null)
            .ToDictionary(pair => pair.Old!.Value, pair => pair.New!.Value);
        var rows = new List<RowPair>();
        var bands = Alignment.Of(old.Bands.Count, @new.Bands.Count, (i, j) =>
            (old.Bands[i].Times > 1) == (@new.Bands[j].Times > 1) ? (i == j && old.Bands[i] == @new.Bands[j] ? 0 : 1) : null);
        foreach (var pair in bands)
        {
            AddBand(rows, old, @new, (pair.Old is { } i ? old.Bands[i] : null, pair.New is { } j ? @new.Bands[j] : null), newOf);
        }

        return new PieceDifference(old, @new, rows.ToSequence());
    }

    /// <summary>The rows that differ, those together that changed in the same way, by the first of each.</summary>
    public Sequence<ChangedRows> Changes() =>
    [
        .. from row in Rows
           where row.Fate != RowFate.Same
           group row by (row.Fate, Old: How(_old, row.Old), New: How(_new, row.New)) into alike
           select new ChangedRows(
               alike.Key.Fate,
               alike.Select(row => row.Old).OfType<int>().ToSequence(),
               alike.Select(row => row.New).OfType<int>().ToSequence()),
    ];

    /// <summary>
    /// Where to go on from each place: the first for no row woven, the last for all of them; each as <see cref="Move"/> says. Takes time in the
    /// order of all rows and stitches.
    /// </summary>
    public Sequence<PlaceMove> Moves()
    {
        var moves = new List<PlaceMove>();
        var (cut, next) = (0, 1);
        var sides = new WeftSides(_old);
        for (var woven = 0; woven <= _old.Rows.Count; woven++)
        {
            while (woven > 0 && (cut == 0 || !(Rows[cut - 1].Old == woven)))
            {
                next = Rows[cut].New + 1 ?? next;
                cut++;
            }

            sides.WeaveTo(woven);
            moves.Add(PlaceAt(next, cut, sides));
        }

        return moves.ToSequence();
    }

    /// <summary>
    /// Where to go on in the new version. Edge stitches before the next row count as worked in both versions: somebody who has woven a number of
    /// rows is about to weave the first run of the row after them.
    /// </summary>
    /// <param name="woven">Rows woven in the old version, from 0 to all.</param>
    public MovedPlace Move(int woven)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(woven);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(woven, _old.Rows.Count);
        var cut = 0;
        for (var at = 0; at < Rows.Count; at++)
        {
            cut = Rows[at].Old <= woven ? at + 1 : cut;
        }

        var next = Rows.Take(cut).Max(row => row.New) + 1 ?? 1;
        var sides = new WeftSides(_old);
        sides.WeaveTo(woven);
        var place = PlaceAt(next, cut, sides);
        return new MovedPlace(
            next,
            Rows.Take(cut).Where(row => row.Fate != RowFate.Same).ToSequence(),
            Rows.Skip(cut).Where(row => row.Fate != RowFate.Same).ToSequence(),
            place.SideNow,
            place.SideNext);
    }

    private PlaceMove PlaceAt(int next, int cut, WeftSides sides) => next <= _new.Rows.Count && _new.Rows[next - 1] is var row
        ? new PlaceMove(next, cut, sides.Of(row.Weft), row.From)
        : new PlaceMove(next, cut, null, null);

    // The reading and the weft: what a weaver does in that row.
    private static (int Reading, int Weft)? How(Piece piece, int? number) =>
        number is { } row ? (piece.Rows[row - 1].Reading, piece.Rows[row - 1].Weft) : null;

    private static void AddBand(List<RowPair> rows, Piece old, Piece @new, (Band? Old, Band? New) bands, Dictionary<int, int> newOf)
    {
        var (a, b) = (bands.Old, bands.New);
        var within = a is null || b is null
            ? []
            : Alignment.Of(a.RowsEachTime, b.RowsEachTime, (i, j) => Cost(old.Rows[a.FirstRow - 1 + i], @new.Rows[b.FirstRow - 1 + j], newOf));
        for (var time = 1; time <= Math.Max(a?.Times ?? 0, b?.Times ?? 0); time++)
        {
            var (from, to) = (time <= a?.Times ? a : null, time <= b?.Times ? b : null);
            if (from is not null && to is not null)
            {
                rows.AddRange(within.Select(pair => Pair(old, @new, from.FirstRowOf(time) + pair.Old, to.FirstRowOf(time) + pair.New)));
            }
            else if ((from ?? to) is { } only)
            {
                rows.AddRange(Enumerable.Range(only.FirstRowOf(time), only.RowsEachTime)
                    .Select(number => from is null ? Pair(old, @new, null, number) : Pair(old, @new, number, null)));
            }
        }
    }

    // Rows of the same motif row, or both plain, belong together; others may stand for each other at the price of one whole row.
    private static int? Cost(WovenRow old, WovenRow @new, Dictionary<int, int> newOf)
    {
        var same = (old.Source.Kind, @new.Source.Kind) switch
        {
            (RowKind.Plain, RowKind.Plain) => true,
            (RowKind.Chart, RowKind.Chart) => newOf.TryGetValue(old.Source.Index, out var moved) && moved == @new.Source.Index,
            _ => false,
        };
        return same ? (old.Weft == @new.Weft ? 0 : Alignment.Whole / 2) : Alignment.Whole + (Alignment.Whole / 2);
    }

    private static RowPair Pair(Piece old, Piece @new, int? i, int? j) => (i, j) switch
    {
        ({ } a, { } b) => new RowPair(a, b, ReadsSame(old, a, @new, b) ? RowFate.Same : RowFate.Changed),
        ({ } a, null) => new RowPair(a, null, RowFate.Removed),
        _ => new RowPair(null, j, RowFate.Inserted),
    };

    private static bool ReadsSame(Piece old, int a, Piece @new, int b)
    {
        var (x, y) = (old.Reading(a), @new.Reading(b));
        return x.Key.From == y.Key.From && old.Rows[a - 1].Weft == @new.Rows[b - 1].Weft && x.Runs.Equals(y.Runs);
    }
}
