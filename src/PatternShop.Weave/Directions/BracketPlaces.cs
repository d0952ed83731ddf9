namespace PatternShop.Weave;

/// <summary>
/// The runs of a row at which brackets can begin, and the repetitions that are brackets there, by period. Everywhere else a row can
/// only be written run by run, so that a search need not stop there.
/// </summary>
internal sealed class BracketPlaces
{
    private int[] _places = [];
    private int[] _indexFrom = [];
    private int[] _first = [];
    private int[] _repetitions = [];
    private int[] _phases = [];
    private int[] _shortest = [];
    private int _count;
    private int _runs;

    /// <summary>Sum of the periods: room for something said of each place in each period.</summary>
    public int Phases { get; private set; }

    public void Set(List<Repetition> found, int runs)
    {
        _runs = runs;
        Fit(runs);
        var starts = _indexFrom.AsSpan(0, runs + 1);
        starts.Clear();
        foreach (var (first, end, period) in found)
        {
            for (var at = first; at + (2 * period) <= end; at++)
            {
                starts[at]++;
            }
        }

        Gather(starts);
        Place(found);
        Cover(found);
    }

    /// <summary>Index of the first place at a run or after it; the number of places where there is none.</summary>
    public int IndexFrom(int run) => _indexFrom[run];

    /// <summary>The run of a place; past the last place the number of runs.</summary>
    public int At(int place) => place < _count ? _places[place] : _runs;

    public ReadOnlySpan<int> Repetitions(int place) => _repetitions.AsSpan(_first[place], _first[place + 1] - _first[place]);

    /// <summary>
    /// For each repetition of a place where something is kept that is the same for all its brackets that begin whole periods apart. The
    /// numbers of a repetition follow one another, and after the last comes the first again.
    /// </summary>
    public ReadOnlySpan<int> PhasesOf(int place) => _phases.AsSpan(_first[place], _first[place + 1] - _first[place]);

    /// <summary>Whether a run stands alone in every writing whose brackets have at most so many runs.</summary>
    public bool IsAlone(int run, int mostRuns) => _shortest[run] > mostRuns;

    private void Place(List<Repetition> found)
    {
        Phases = 0;
        for (var i = 0; i < found.Count; i++)
        {
            var (first, end, period) = found[i];
            var phase = 0;
            for (var at = first; at + (2 * period) <= end; at++)
            {
                var to = _first[_indexFrom[at] + 1]++;
                (_repetitions[to], _phases[to]) = (i, Phases + phase);
                phase = phase + 1 == period ? 0 : phase + 1;
            }

            Phases += period;
        }
    }

    // The shortest period that covers each run: repetitions stand by period, so the shortest comes last when they are gone through backwards.
    private void Cover(List<Repetition> found)
    {
        Array.Fill(_shortest, int.MaxValue, 0, _runs);
        for (var i = found.Count - 1; i >= 0; i--)
        {
            Array.Fill(_shortest, found[i].Period, found[i].First, found[i].End - found[i].First);
        }
    }

    // Turns numbers of repetitions into indexes of places. _first is kept one further on while it is filled, so that it ends up right.
    private void Gather(Span<int> starts)
    {
        _count = 0;
        var total = 0;
        _first[0] = 0;
        for (var at = 0; at < starts.Length; at++)
        {
            var here = starts[at];
            starts[at] = _count;
            if (here > 0)
            {
                _places[_count++] = at;
                _first[_count] = total;
                total += here;
            }
        }

        if (_repetitions.Length < total)
        {
            _repetitions = new int[total * 2];
            _phases = new int[total * 2];
        }
    }

    private void Fit(int runs)
    {
        if (_indexFrom.Length <= runs)
        {
            _places = new int[runs + 1];
            _indexFrom = new int[runs + 1];
            _first = new int[runs + 2];
            _shortest = new int[runs + 1];
        }
    }
}
