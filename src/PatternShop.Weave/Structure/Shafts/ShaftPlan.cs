namespace PatternShop.Weave;

/// <summary>
/// How a piece is woven on a loom with shafts, floating selvedges apart: these are on no shaft. It has the fewest shafts and lifts there can
/// be, for two ends can share a shaft exactly when they do the same in every row, and two rows a lift when they do the same at every end.
/// </summary>
/// <param name="Shafts">Number of shafts.</param>
/// <param name="EndOrder">For every pattern end from the left its shaft, from 1; shafts are numbered as they are first met.</param>
/// <param name="TieUp">For every lift the shafts that it raises, ascending; a raised end is on top, so the weft goes under it. Lifts are numbered as they are first woven.</param>
/// <param name="RowLifts">For every row in weaving order its lift, from 1.</param>
public sealed record ShaftPlan(int Shafts, Sequence<int> EndOrder, Sequence<Sequence<int>> TieUp, Sequence<int> RowLifts)
{
    /// <summary>Most shafts of a plan that readers are shown: looms with more are driven by files, not by printed tables.</summary>
    public const int MostShown = 16;

    /// <summary>Most lifts of a plan that readers are shown.</summary>
    public const int MostLiftsShown = 64;

    /// <summary>Whether a table of the plan is of use to a reader.</summary>
    public bool IsShown => Shafts <= MostShown && TieUp.Count <= MostLiftsShown;

    /// <summary>The plan of a piece.</summary>
    public static ShaftPlan Of(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var cells = SourceNames.PatternCells(piece);
        var (ends, shafts) = Numbered(ThreadNames.OfEnds(cells));
        var (readings, lifts) = Numbered(ThreadNames.OfRows(cells));
        return new ShaftPlan(
            shafts.Count,
            ends.ToSequence(),
            lifts.Select(row => Enumerable.Range(1, shafts.Count).Where(shaft => !cells[row, shafts[shaft - 1]]).ToSequence()).ToSequence(),
            piece.Rows.Select(row => readings[row.Reading]).ToSequence());
    }

    // Numbers from 1 as they are first met, and what was met first for each number.
    private static (int[] Numbers, List<int> First) Numbered(int[] names)
    {
        var first = new List<int>();
        var numbers = new int[names.Length];
        for (var i = 0; i < names.Length; i++)
        {
            if (names[i] == i)
            {
                first.Add(i);
            }

            numbers[i] = names[i] == i ? first.Count : numbers[names[i]];
        }

        return (numbers, first);
    }
}
