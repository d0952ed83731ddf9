namespace PatternShop.Weave;

/// <summary>The best writings up to a run that is the end: for each place where a bracket can begin, their cost and the bracket.</summary>
internal sealed class WritingTable
{
    private const int None = -1;
    private BracketPlaces _places = new();
    private long[] _best = [];
    private long[] _contents = [];
    private int[] _chosen = [];
    private long[] _rest = [];
    private int _to;
    private int _end;

    public void Begin(BracketPlaces places, int to)
    {
        (_places, _to, _end) = (places, to, places.IndexFrom(to));
        if (_best.Length < _end)
        {
            _best = new long[_end * 2];
            _contents = new long[_end * 2];
            _chosen = new int[_end * 2];
        }

        if (_rest.Length < places.Phases)
        {
            _rest = new long[places.Phases * 2];
        }
    }

    public long Best(int place) => _best[place];

    public long Contents(int place) => _contents[place];

    /// <summary>The repetition whose bracket begins at a place; null where the run stands alone.</summary>
    public int? Chosen(int place) => _chosen[place] == None ? null : _chosen[place];

    /// <summary>The cost of the best writing from a run on.</summary>
    public long From(int run)
    {
        var place = _places.IndexFrom(run);
        return place < _end ? _best[place] + ((_places.At(place) - run) * WritingCost.Run) : (_to - run) * WritingCost.Run;
    }

    public void Plain(int place, int at)
    {
        _best[place] = From(at + 1) + WritingCost.Run;
        _chosen[place] = None;
    }

    /// <summary>Takes a bracket that is better, or as good as no bracket here; of equally good ones the one offered first, which is the shortest.</summary>
    public void Offer(int place, int repetition, long contents, long cost)
    {
        if (cost < _best[place] || (cost == _best[place] && _chosen[place] == None))
        {
            (_best[place], _chosen[place], _contents[place]) = (cost, repetition, contents);
        }
    }

    /// <summary>The best of what follows a bracket of two, three … times; asked for from the last place to the first.</summary>
    public long Rest(int phase, int at, int period, int end)
    {
        var twice = From(at + (2 * period));
        return _rest[phase] = at + (3 * period) <= end ? Math.Min(twice, _rest[phase]) : twice;
    }
}
