namespace PatternShop.Weave;

/// <summary>What a weaver reads off a row of the cloth.</summary>
/// <param name="From">The side at which they begin to read, whichever side the row was woven from.</param>
/// <param name="Runs">The first runs from there, all of them or a few; each as long as it is in the cloth.</param>
public sealed record SeenRow(Side From, Sequence<Run> Runs);

/// <summary>The rows that a weaver may have woven last.</summary>
/// <param name="Rows">Their numbers, in weaving order; empty where no row reads so.</param>
/// <param name="BelowTells">Whether the rows below them read differently, so that the one below says more.</param>
public sealed record FoundRows(Sequence<int> Rows, bool BelowTells)
{
    /// <summary>The row, where only one reads so.</summary>
    public int? One => Rows.Count == 1 ? Rows[0] : null;
}

/// <summary>Finds the row that was woven last from what it looks like.</summary>
public static class WhichRow
{
    /// <summary>
    /// The rows whose runs begin as those that were seen and, where the row below was looked at too, whose row before in the weaving
    /// order begins as that. The true row is among them however few runs were read.
    /// </summary>
    /// <param name="piece">The piece.</param>
    /// <param name="row">The row woven last.</param>
    /// <param name="below">The row below it; null where nobody looked.</param>
    public static FoundRows Find(Piece piece, SeenRow row, SeenRow? below = null)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(row);
        var reads = Reads(piece, row);
        var belowReads = below is null ? null : Reads(piece, below);
        var rows = piece.Rows
            .Where(woven => reads[woven.Reading] && (belowReads is null || (woven.Number > 1 && belowReads[piece.Rows[woven.Number - 2].Reading])))
            .Select(woven => woven.Number)
            .ToSequence();
        return new FoundRows(rows, rows.Select(number => number == 1 ? null : Seen(piece, number - 1)).Distinct().Skip(1).Any());
    }

    /// <summary>Whether the runs of a reading begin, from the side where somebody begins to read, as those that were seen.</summary>
    public static bool BeginsAs(this Reading reading, SeenRow seen)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(seen);
        var (runs, wanted) = (reading.Runs, seen.Runs);
        if (wanted.Count > runs.Count)
        {
            return false;
        }

        var forwards = seen.From == reading.Key.From;
        for (var i = 0; i < wanted.Count; i++)
        {
            if (runs[forwards ? i : runs.Count - 1 - i] != wanted[i])
            {
                return false;
            }
        }

        return true;
    }

    private static bool[] Reads(Piece piece, SeenRow seen) => [.. piece.Readings.Select(reading => reading.BeginsAs(seen))];

    // The cells of a row say what it looks like, from whichever side it was woven.
    private static Sequence<ulong> Seen(Piece piece, int number) => Sequence.Of(piece.Cells.RowWords(piece.Rows[number - 1].Reading));
}
