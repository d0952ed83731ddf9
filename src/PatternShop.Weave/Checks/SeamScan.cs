namespace PatternShop.Weave;

/// <summary>The longest floats of the ends across the seams of some repeated rows.</summary>
internal sealed class SeamsOf(Band band)
{
    private readonly List<Area> _areas = [];

    public Band Band => band;

    /// <summary>Rows in the longest.</summary>
    public int Longest { get; private set; }

    /// <summary>The first of the longest, by row.</summary>
    public Sequence<Area> Areas => _areas.OrderBy(area => area.FirstRow).ThenBy(area => area.FirstEnd).ToSequence();

    public void Add(WarpRun run)
    {
        if (run.Count > Longest)
        {
            Longest = run.Count;
            _areas.Clear();
        }

        if (run.Count == Longest && _areas.Count < Finding.MostAreas)
        {
            _areas.Add(new Area(AreaOf.Piece, run.First, run.Last, run.Column, run.Column));
        }
    }
}

/// <summary>How long ends float across seams between two times through, and how long where there is none.</summary>
internal sealed class SeamScan
{
    private readonly (int Row, SeamsOf Band)?[] _next;

    private SeamScan(Piece piece, List<Band> repeated)
    {
        Bands = repeated.ConvertAll(band => new SeamsOf(band));
        _next = NextSeams(piece.Rows.Count, Bands);
    }

    public List<SeamsOf> Bands { get; }

    /// <summary>Rows in the longest float that crosses no seam.</summary>
    public int Elsewhere { get; private set; }

    public static SeamScan Of(Piece piece, List<Band> repeated)
    {
        var scan = new SeamScan(piece, repeated);
        WarpRuns.Visit(piece, scan.Add);
        return scan;
    }

    private void Add(WarpRun run)
    {
        if (_next[run.First] is { } seam && seam.Row <= run.Last)
        {
            seam.Band.Add(run);
        }
        else
        {
            Elsewhere = Math.Max(Elsewhere, run.Count);
        }
    }

    // for every row (from 1) the first row after it that begins another time through
    private static (int Row, SeamsOf Band)?[] NextSeams(int rows, List<SeamsOf> bands)
    {
        var next = new (int Row, SeamsOf Band)?[rows + 1];
        foreach (var seams in bands)
        {
            for (var time = 2; time <= seams.Band.Times; time++)
            {
                next[seams.Band.FirstRowOf(time) - 1] = (seams.Band.FirstRowOf(time), seams);
            }
        }

        for (var row = rows - 1; row >= 0; row--)
        {
            next[row] ??= next[row + 1];
        }

        return next;
    }
}
