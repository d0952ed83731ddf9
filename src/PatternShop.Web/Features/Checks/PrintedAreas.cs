using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// Where cells are, for the script that marks them: the chart ("motif" or "piece"), rows by their printed number (in the motif from 1) and
/// ends from 0, floating ends included; first and last counted.
/// </summary>
internal sealed record MarkedBlock(string Of, int FirstRow, int LastRow, int FirstEnd, int LastEnd);

/// <summary>Finds the printed rows that stand for rows of the whole piece.</summary>
internal static class PrintedAreas
{
    /// <summary>Blocks that are sent at most.</summary>
    public const int Most = 64;

    /// <summary>The same areas in printed rows, the first of them if there are many.</summary>
    public static IReadOnlyList<MarkedBlock> Of(Piece piece, IEnumerable<Area> areas) =>
        [.. areas.SelectMany(area => Blocks(piece, area)).Distinct().Take(Most)];

    private static IEnumerable<MarkedBlock> Blocks(Piece piece, Area area) => area.Of == AreaOf.Motif
        ? [new MarkedBlock("motif", area.FirstRow, area.LastRow, area.FirstEnd, area.LastEnd)]
        : Printed(piece, area).Select(rows => new MarkedBlock("piece", rows.First, rows.Last, area.FirstEnd, area.LastEnd));

    private static List<(int First, int Last)> Printed(Piece piece, Area area)
    {
        var stretches = new List<(int First, int Last)>();
        foreach (var row in Enumerable.Range(area.FirstRow, area.LastRow - area.FirstRow + 1).Select(piece.PrintedFor).Distinct())
        {
            if (stretches.Count > 0 && stretches[^1].Last + 1 == row)
            {
                stretches[^1] = (stretches[^1].First, row);
            }
            else
            {
                stretches.Add((row, row));
            }
        }

        return stretches;
    }
}
