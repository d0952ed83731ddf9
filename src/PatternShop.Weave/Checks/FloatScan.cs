namespace PatternShop.Weave;

/// <summary>The floats of one kind in a whole piece.</summary>
internal sealed class KindOfFloat
{
    private readonly List<Area> _tooLong = [];

    /// <summary>Threads in the longest stretch; 1 is no float.</summary>
    public int Longest { get; private set; }

    /// <summary>The first of the longest.</summary>
    public Area LongestAt { get; private set; }

    /// <summary>Floats that are longer than allowed.</summary>
    public int TooLong { get; private set; }

    /// <summary>The first of those, by row; rows that read like a row before are not named again.</summary>
    public Sequence<Area> FirstTooLong => _tooLong.OrderBy(area => area.FirstRow).ThenBy(area => area.FirstEnd).ToSequence();

    public void Add(int threads, int most, Area area, int times)
    {
        if (threads > Longest)
        {
            (Longest, LongestAt) = (threads, area);
        }

        if (threads > most)
        {
            TooLong += times;
            if (_tooLong.Count < Finding.MostAreas)
            {
                _tooLong.Add(area);
            }
        }
    }
}

/// <summary>All floats of a piece, across motifs, seams, plain rows, edges and floating ends.</summary>
internal static class FloatScan
{
    /// <summary>The floats by <see cref="FloatKind"/>.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="most">The most threads that a float of a kind may pass.</param>
    public static KindOfFloat[] Of(Piece piece, Func<FloatKind, int> most)
    {
        int[] allowed = [.. Enum.GetValues<FloatKind>().Select(most)];
        KindOfFloat[] found = [new(), new(), new(), new()];
        Weft(piece, allowed, found);
        WarpRuns.Visit(piece, run =>
        {
            var kind = (int)(run.Over ? FloatKind.WarpUnder : FloatKind.WarpOver);
            found[kind].Add(run.Count, allowed[kind], new Area(AreaOf.Piece, run.First, run.Last, run.Column, run.Column), run.Times);
        });
        return found;
    }

    // Each reading is looked at where it is woven first; later rows that read so are counted there.
    private static void Weft(Piece piece, int[] allowed, KindOfFloat[] found)
    {
        var rows = new int[piece.Keys.Count];
        foreach (var row in piece.Rows)
        {
            rows[row.Reading]++;
        }

        foreach (var row in piece.Rows)
        {
            if (rows[row.Reading] > 0)
            {
                Row(piece, row, rows[row.Reading], allowed, found);
                rows[row.Reading] = 0;
            }
        }
    }

    private static void Row(Piece piece, WovenRow row, int times, int[] allowed, KindOfFloat[] found)
    {
        var runs = new BitRuns(piece.Cells.RowWords(row.Reading), piece.Ends);
        while (runs.Next())
        {
            var kind = (int)(runs.Over ? FloatKind.WeftOver : FloatKind.WeftUnder);
            found[kind].Add(runs.Count, allowed[kind], new Area(AreaOf.Piece, row.Number, row.Number, runs.First, runs.First + runs.Count - 1), times);
        }
    }
}
