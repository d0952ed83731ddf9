namespace PatternShop.Weave;

/// <summary>A point about which half a turn leaves a repeated motif as it is.</summary>
public readonly record struct HalfTurn(Middle Row, Middle End);

/// <summary>
/// All that moves, mirrors or turns a motif repeated without end onto itself, over staying over. Rows and ends are counted from 0,
/// row 0 at the bottom, and modulo the motif.
/// </summary>
/// <param name="Rows">Rows of the motif.</param>
/// <param name="Ends">Ends of the motif.</param>
/// <param name="Across">The smallest number of ends by which it can be moved to the right alone.</param>
/// <param name="Up">The smallest number of rows, above 0, by which it can be moved up, to the right as well if need be.</param>
/// <param name="Aside">The ends to the right that go with <paramref name="Up"/>, from 0 below <paramref name="Across"/>.</param>
/// <param name="MirrorEnds">Sums s below the number of ends, ascending: end e and end s - e are alike in every row.</param>
/// <param name="MirrorRows">Sums s below the number of rows, ascending: row r and row s - r are alike at every end.</param>
/// <param name="Turn">
/// Sums (rows, ends) of one half turn, the first by rows, then by ends: row r, end e is like row s - r, end t - e; null when there is none.
/// </param>
public sealed record Symmetry(
    int Rows,
    int Ends,
    int Across,
    int Up,
    int Aside,
    Sequence<int> MirrorEnds,
    Sequence<int> MirrorRows,
    (int Rows, int Ends)? Turn)
{
    /// <summary>The smallest number of rows by which the motif can be moved up alone.</summary>
    public int Along => Aside == 0 ? Up : Up * (Across / Divisors.Greatest(Across, Aside));

    /// <summary>Every place across, within one motif, where left and right mirror.</summary>
    public Sequence<Middle> AxesAcross => Places(MirrorEnds, Ends);

    /// <summary>Every place along, within one motif, where top and bottom mirror.</summary>
    public Sequence<Middle> AxesAlong => Places(MirrorRows, Rows);

    /// <summary>Finds them all. The time grows with the number of cells.</summary>
    public static Symmetry Of(BitGrid motif)
    {
        ArgumentNullException.ThrowIfNull(motif);
        var ends = ThreadNames.OfEnds(motif);
        var rows = ThreadNames.OfRows(motif);
        var moves = new RowMoves(motif, rows);
        var across = Periods.Of(ends).Whole;
        var (up, aside) = moves.SmallestUp();
        return new Symmetry(
            motif.Rows,
            motif.Columns,
            across,
            up,
            aside,
            Borders.Axes(ends).ToSequence(),
            Borders.Axes(rows).ToSequence(),
            moves.FirstHalfTurn(up));
    }

    /// <summary>Every centre of a half turn within one motif, by rows, then by ends. There may be four for every cell.</summary>
    public IEnumerable<HalfTurn> HalfTurns()
    {
        if (Turn is not { } turn)
        {
            yield break;
        }

        for (var row = 0; row < 2 * Rows; row++)
        {
            var steps = Modulo(row - turn.Rows, Rows);
            if (steps % Up != 0)
            {
                continue;
            }

            var end = Modulo(turn.Ends + (steps / Up * Aside), Across);
            for (var at = end; at < 2 * Ends; at += Across)
            {
                yield return new HalfTurn(new Middle(row), new Middle(at));
            }
        }
    }

    private static Sequence<Middle> Places(Sequence<int> sums, int threads) =>
        sums.Concat(sums.Select(sum => sum + threads)).Select(sum => new Middle(sum)).ToSequence();

    private static int Modulo(int value, int by) => ((value % by) + by) % by;
}
