namespace PatternShop.Weave;

/// <summary>Finds how many rows close a piece so that its last figure is whole.</summary>
public static class ClosingRows
{
    /// <summary>
    /// The fewest rows, taken from the beginning of the motif's rows, that make any number of times through all rows, woven upwards, mirror
    /// top to bottom; null when none do.
    /// </summary>
    public static int? Fewest(BitGrid motif)
    {
        ArgumentNullException.ThrowIfNull(motif);
        return Fewest(ThreadNames.OfRows(motif), 1);
    }

    /// <summary>
    /// The fewest of the rows that would come next if the repeated rows went on, which make these mirror top to bottom once they are woven
    /// after the last time through: in what the weft does at the pattern ends, whatever the side it comes from. Null when none do, or when
    /// not exactly one group of rows is repeated.
    /// </summary>
    public static int? Fewest(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var repeated = piece.Bands.Where(band => band.Kind == BandKind.Repeated).ToList();
        if (repeated.Count != 1)
        {
            return null;
        }

        // plain rows alternate: what an odd number of them do comes back every other time only
        var band = repeated[0];
        var names = SourceNames.Of(piece);
        var rows = new int[band.RowsEachTime * Math.Min(2, band.Times)];
        for (var i = 0; i < rows.Length; i++)
        {
            rows[i] = names[piece.Rows[band.FirstRow - 1 + i].Reading];
        }

        var comesBack = rows.Length == band.RowsEachTime || rows.AsSpan(0, band.RowsEachTime).SequenceEqual(rows.AsSpan(band.RowsEachTime));
        return comesBack ? Fewest(rows.AsSpan(0, band.RowsEachTime), 1) : Fewest(rows, band.Times);
    }

    // Ring: the rows that come back in the same way, one or two times through; times: how often the shorter group is woven.
    private static int? Fewest(ReadOnlySpan<int> ring, int times)
    {
        var each = times > 1 ? ring.Length / 2 : ring.Length;
        var woven = each * times;
        int? fewest = null;
        foreach (var axis in Borders.Axes(ring))
        {
            // so many rows woven and c more mirror where woven + c - 1 is the axis
            var closing = ((axis + 1 - woven) % ring.Length + ring.Length) % ring.Length;
            fewest = closing < (fewest ?? int.MaxValue) ? closing : fewest;
        }

        return fewest;
    }
}
