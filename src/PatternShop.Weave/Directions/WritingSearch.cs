using System.Runtime.InteropServices;

namespace PatternShop.Weave;

/// <summary>
/// The search behind <see cref="ShortestWriting"/>; one can be used again for the rows of a piece, which saves its tables. The best
/// writings of the runs from each one on are worked out from the last run to the first: the run itself, or a bracket of each
/// <see cref="Repetition"/> that covers it, before what was worked out for the runs after it. What an outer bracket costs inside is
/// worked out likewise, but only where it could matter: it is never less than what brackets of runs save there in the whole row.
/// </summary>
internal sealed class WritingSearch(int motifEnds)
{
    private const long Unknown = long.MaxValue;
    private readonly Repetitions _repetitions = new();
    private readonly BracketPlaces _places = new();
    private readonly WritingTable _flat = new();
    private readonly WritingTable _outer = new();
    private readonly WritingTable _inside = new();
    private List<Repetition> _found = [];
    private bool[] _isMotif = [];
    private int[] _firstPhase = [];
    private long[] _contents = [];

    public Writing Of(Sequence<Run> runs, int levels)
    {
        ArgumentNullException.ThrowIfNull(runs);
        Check(runs);
        ArgumentOutOfRangeException.ThrowIfLessThan(levels, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(levels, ShortestWriting.Levels);
        _found = _repetitions.Of(runs.AsSpan());
        var items = new List<WritingItem>(runs.Count);
        if (_found.Count == 0)
        {
            Append(items, runs, 0, runs.Count);
            return new Writing(Sequence.Of<WritingItem>(CollectionsMarshal.AsSpan(items)));
        }

        Prepare(runs);
        var table = levels == 1 ? _flat : _outer;
        Search(_flat, 0, runs.Count, nested: false);
        if (levels > 1)
        {
            Search(_outer, 0, runs.Count, nested: true);
        }

        Assemble(items, runs, table, 0, runs.Count);
        return new Writing(Sequence.Of<WritingItem>(CollectionsMarshal.AsSpan(items)));
    }

    private static void Check(Sequence<Run> runs)
    {
        if (runs.Count > ShortestWriting.MostRuns)
        {
            throw new ArgumentException($"A row of {runs.Count} runs is too long to be written; {ShortestWriting.MostRuns} is the most.", nameof(runs));
        }

        var all = runs.AsSpan();
        for (var i = 1; i < all.Length; i++)
        {
            if (all[i].Stroke == all[i - 1].Stroke)
            {
                throw new ArgumentException($"Runs {i} and {i + 1} are both {all[i].Stroke}.", nameof(runs));
            }
        }
    }

    private void Prepare(Sequence<Run> runs)
    {
        _places.Set(_found, runs.Count);
        if (_isMotif.Length < _found.Count)
        {
            _isMotif = new bool[_found.Count * 2];
            _firstPhase = new int[_found.Count * 2];
        }

        var phases = 0;
        for (var i = 0; i < _found.Count; i++)
        {
            _firstPhase[i] = phases;
            phases += _found[i].Period;
            var ends = 0;
            foreach (var run in runs.AsSpan().Slice(_found[i].First, _found[i].Period))
            {
                ends += run.Count;
            }

            _isMotif[i] = ends == motifEnds;
        }

        if (_contents.Length < _places.Phases)
        {
            _contents = new long[_places.Phases * 2];
        }

        Array.Fill(_contents, Unknown, 0, _places.Phases);
    }

    private void Search(WritingTable table, int from, int to, bool nested)
    {
        table.Begin(_places, to);
        var (first, end) = (_places.IndexFrom(from), _places.IndexFrom(to));
        for (var place = end - 1; place >= first; place--)
        {
            var at = _places.At(place);
            table.Plain(place, at);
            var repetitions = _places.Repetitions(place);
            var phases = _places.PhasesOf(place);
            for (var k = 0; k < repetitions.Length; k++)
            {
                var i = repetitions[k];
                var (_, last, period) = _found[i];
                if (at + (2 * period) > to)
                {
                    break;
                }

                var rest = table.Rest(phases[k], at, period, Math.Min(last, to));
                var contents = nested ? Contents(i, at, phases[k], rest + Around(i, 0) - table.Best(place)) : period * WritingCost.Run;
                if (contents != Unknown)
                {
                    table.Offer(place, i, contents, rest + contents + Around(i, contents));
                }
            }
        }
    }

    // What a bracket adds to its contents.
    private long Around(int repetition, long contents) =>
        WritingCost.Bracket + (_isMotif[repetition] ? WritingCost.Motif : 0) + (WritingCost.HasBrackets(contents) ? WritingCost.Nested : 0);

    // What one time through an outer bracket costs inside; unknown where it cannot be better than what is known already. `more` is what
    // everything but the inside costs more than the best that is known.
    private long Contents(int repetition, int at, int phase, long more)
    {
        var period = _found[repetition].Period;
        var plain = period * WritingCost.Run;
        var least = _flat.From(at) - _flat.From(at + period);
        if (least >= plain)
        {
            return plain;
        }

        if (more + least > 0)
        {
            return Unknown;
        }

        // a bracket that begins a period later has the same inside, and so has one that begins a run later where the run
        // that it leaves and the one that it takes in, which are alike, stand alone
        ref var known = ref _contents[phase];
        if (known == Unknown && _places.IsAlone(at, period / 2) && _places.IsAlone(at + period, period / 2))
        {
            known = _contents[NextPhase(repetition, phase)];
        }

        if (known == Unknown)
        {
            Search(_inside, at, at + period, nested: false);
            known = _inside.From(at);
        }

        return known;
    }

    private int NextPhase(int repetition, int phase) => phase + 1 == _firstPhase[repetition] + _found[repetition].Period ? _firstPhase[repetition] : phase + 1;

    private void Assemble(List<WritingItem> items, Sequence<Run> runs, WritingTable table, int from, int to)
    {
        for (var at = from; at < to;)
        {
            var place = _places.IndexFrom(at);
            var next = Math.Min(_places.At(place), to);
            Append(items, runs, at, next);
            at = next;
            if (at == to)
            {
                return;
            }

            if (table.Chosen(place) is not { } chosen)
            {
                Append(items, runs, at, ++at);
                continue;
            }

            var (_, last, period) = _found[chosen];
            var contents = table.Contents(place);
            var rest = table.Best(place) - contents - Around(chosen, contents);
            var times = (Math.Min(last, to) - at) / period;
            while (table.From(at + (times * period)) != rest)
            {
                times--;
            }

            items.Add(new BracketItem(Inside(runs, at, at + period, contents), times));
            at += times * period;
        }
    }

    private Sequence<WritingItem> Inside(Sequence<Run> runs, int from, int to, long contents)
    {
        var items = new List<WritingItem>();
        if (WritingCost.HasBrackets(contents))
        {
            Search(_inside, from, to, nested: false);
            Assemble(items, runs, _inside, from, to);
        }
        else
        {
            Append(items, runs, from, to);
        }

        return Sequence.Of<WritingItem>(CollectionsMarshal.AsSpan(items));
    }

    private static void Append(List<WritingItem> items, Sequence<Run> runs, int from, int to)
    {
        foreach (var run in runs.AsSpan()[from..to])
        {
            items.Add(RunItem.Of(run));
        }
    }
}
