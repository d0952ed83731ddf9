using System.Globalization;

namespace PatternShop.Weave;

/// <summary>Which threads make the face of a satin.</summary>
public enum SatinFace
{
    /// <summary>The ends: the weft is over one end in each row.</summary>
    Warp,

    /// <summary>The wefts: the weft is under one end in each row.</summary>
    Weft,
}

/// <summary>Regular satins.</summary>
public static class Satins
{
    /// <summary>
    /// The move numbers that make a satin of n ends: from 2 to n - 2 and without a common divisor with n, ascending. Theory of satins as
    /// in A. Wolfensberger, Theory of Silk Weaving, 2nd ed. 1921, p. 33.
    /// </summary>
    public static Sequence<int> Moves(int ends) =>
        Enumerable.Range(2, Math.Max(0, ends - 3)).Where(move => Divisors.Greatest(ends, move) == 1).ToSequence();

    /// <summary>A satin of n ends: the binding point of each row lies Move ends to the right of the one below.</summary>
    public static WeaveResult Regular(int ends, int move, SatinFace face)
    {
        if (ends is < 5 or > 100)
        {
            return WeaveResult.Refuse("satin-ends", "ends", $"There is no satin of {ends} ends here.", "Choose from 5 to 100 ends.");
        }

        var moves = Moves(ends);
        if (!moves.Contains(move))
        {
            var remedy = moves.Count == 0
                ? $"No move makes a satin of {ends} ends; choose another number of ends."
                : $"Choose one of {string.Join(", ", moves.Select(m => m.ToString(CultureInfo.InvariantCulture)))}.";
            return WeaveResult.Refuse("satin-move", "move", $"A move of {move} makes no satin of {ends} ends.", remedy);
        }

        return new WeaveResult.Made(BitGrid.Create(ends, ends, (row, end) => (end == row * move % ends) == (face == SatinFace.Warp)));
    }
}
