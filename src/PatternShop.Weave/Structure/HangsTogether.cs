using System.Numerics;

namespace PatternShop.Weave;

/// <summary>Threads that lift off as a layer of their own.</summary>
/// <param name="Rows">Motif rows of the layer, from 0, ascending.</param>
/// <param name="Ends">Motif ends of the layer, from 0, ascending.</param>
public sealed record Layer(Sequence<int> Rows, Sequence<int> Ends);

/// <summary>
/// Whether the cloth of a motif repeated without end holds together, or falls apart into layers. Floating selvedges and
/// turns are left out: they would only sew the layers together at the edge. C. R. J. Clapham, "When a fabric hangs
/// together", Bull. London Math. Soc. 12 (1980) 161-164.
/// </summary>
public static class HangsTogether
{
    /// <summary>True when the cloth holds together.</summary>
    public static bool Test(BitGrid motif) => LooseLayer(motif) is null;

    /// <summary>
    /// The layer that lifts off towards the weaver with the fewest rows, or null when the cloth holds together. Every row of the layer
    /// passes over every end outside it, and every end of the layer lies over every row outside it.
    /// </summary>
    /// <remarks>
    /// Write overs for the ends that a row passes over, and tops for the rows that an end lies over. For any p rows and q ends of an
    /// m × n motif the sum of their overs and tops is at most p n + q (m - p), and it reaches that exactly when they are such a layer; so
    /// only the threads with the largest counts need be tried, and for each p the best q counts the ends with tops above m - p.
    /// </remarks>
    public static Layer? LooseLayer(BitGrid motif)
    {
        ArgumentNullException.ThrowIfNull(motif);
        var overs = RowSums(motif);
        var tops = RowSums(motif.Transpose()).Select(over => motif.Rows - over).ToArray();
        var byRow = Enumerable.Range(0, motif.Rows).OrderByDescending(row => overs[row]).ToArray();
        var byEnd = Enumerable.Range(0, motif.Columns).OrderByDescending(end => tops[end]).ToArray();
        var q = 0;
        long oversOfP = 0;
        long topsOfQ = 0;
        for (var p = 0; p <= motif.Rows; p++)
        {
            oversOfP += p == 0 ? 0 : overs[byRow[p - 1]];
            var outside = motif.Rows - p;
            while (q < motif.Columns && (tops[byEnd[q]] > outside || (p == 0 && tops[byEnd[q]] == outside)))
            {
                topsOfQ += tops[byEnd[q++]];
            }

            var gained = oversOfP + topsOfQ - ((long)p * motif.Columns) - ((long)q * outside);
            var everything = p == motif.Rows && q == motif.Columns;
            if (gained == 0 && p + q > 0 && !everything)
            {
                return new Layer(byRow.Take(p).Order().ToSequence(), byEnd.Take(q).Order().ToSequence());
            }
        }

        return null;
    }

    private static int[] RowSums(BitGrid grid)
    {
        var sums = new int[grid.Rows];
        for (var row = 0; row < grid.Rows; row++)
        {
            foreach (var word in grid.RowWords(row))
            {
                sums[row] += BitOperations.PopCount(word);
            }
        }

        return sums;
    }
}
