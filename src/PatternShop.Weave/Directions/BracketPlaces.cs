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
    private int[] _phase = [];
    private int[] _period = [];
    private int _count;
    private int _runs;

    /// <summary>Sum of the periods: room for something said of each place in each period.</summary>
    public int Phases { get; private set; }

    public void Set(List<Repetition> found, int runs)
    {
        _runs = runs;
        Fit(found, runs);
        var starts = _indexFrom.AsSpan(0, runs + 1);
        starts.Clear();
        Phases = 0;
        for (var i = 0; i < found.Count; i++)
        {
            (_phase[i], _period[i]) = (Phases, found[i].Period);
            Phases += found[i].Period;
            for (var at = found[i].First; at + (2 * found[i].Period) <= found[i].End; at++)
            {
                starts[at]++;
            }
        }

        Gather(starts);
        for (var i = 0; i < found.Count; i++)
        {
            for (var at = found[i].First; at + (2 * found[i].Period) <= found[i].End; at++)
            {
                _repetitions[_first[_indexFrom[at] + 1]++] = i;
            }
        }
    }

    /// <summary>Index of the first place at a run or after it; the number of places where there is none.</summary>
    public int IndexFrom(int run) => _indexFrom[run];

    /// <summary>The run of a place; past the last place the number of runs.</summary>
    public int At(int place) => place < _count ? _places[place] : _runs;

    public ReadOnlySpan<int> Repetitions(int place) => _repetitions.AsSpan(_first[place], _first[place + 1] - _first[place]);

    /// <summary>Where something is kept that is the same for all brackets of a repetition that begin whole periods apart.</summary>
    public int Phase(int repetition, int at) => _phase[repetition] + (at % _period[repetition]);

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
        }
    }

    private void Fit(List<Repetition> found, int runs)
    {
        if (_indexFrom.Length <= runs)
        {
            _places = new int[runs + 1];
            _indexFrom = new int[runs + 1];
            _first = new int[runs + 2];
        }

        if (_phase.Length < found.Count)
        {
            _phase = new int[found.Count * 2];
            _period = new int[found.Count * 2];
        }
    }
}
