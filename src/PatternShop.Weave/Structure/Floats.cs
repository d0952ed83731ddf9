namespace PatternShop.Weave;

/// <summary>
/// The longest stretches of a woven piece in threads: of the weft over and under ends, of an end over and under rows
/// (as seen on the face). A stretch of 1 is no float.
/// </summary>
public sealed record LongestFloats(int WeftOver, int WeftUnder, int WarpOver, int WarpUnder)
{
    /// <summary>The longest of all.</summary>
    public int Longest => Math.Max(Math.Max(WeftOver, WeftUnder), Math.Max(WarpOver, WarpUnder));
}

/// <summary>Measures floats in the whole piece, across motifs, seams, plain rows and edges.</summary>
public static class Floats
{
    /// <summary>The longest stretch of each kind.</summary>
    public static LongestFloats Longest(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var (weftOver, weftUnder) = (0, 0);
        foreach (var run in Enumerable.Range(0, piece.Cells.Rows).SelectMany(row => Runs.Of(piece.Cells, row, Side.Left)))
        {
            (weftOver, weftUnder) = run.Stroke == Stroke.Over
                ? (Math.Max(weftOver, run.Count), weftUnder)
                : (weftOver, Math.Max(weftUnder, run.Count));
        }

        var byEnd = piece.Cells.Transpose();
        var (warpOver, warpUnder) = (0, 0);
        for (var end = 0; end < piece.Ends; end++)
        {
            var words = byEnd.RowWords(end);
            var (stretch, over) = (0, false);
            foreach (var row in piece.Rows)
            {
                var weftIsOver = (words[row.Reading >> 6] >> (row.Reading & 63) & 1) != 0;
                stretch = weftIsOver == over ? stretch + 1 : 1;
                over = weftIsOver;
                (warpOver, warpUnder) = over
                    ? (warpOver, Math.Max(warpUnder, stretch))
                    : (Math.Max(warpOver, stretch), warpUnder);
            }
        }

        return new LongestFloats(weftOver, weftUnder, warpOver, warpUnder);
    }
}
