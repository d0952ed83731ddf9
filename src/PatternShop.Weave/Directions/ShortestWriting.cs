namespace PatternShop.Weave;

/// <summary>Finds the shortest writing of a row.</summary>
public static class ShortestWriting
{
    /// <summary>
    /// The writing with the fewest items with one level of brackets. Among equally short ones: the most brackets that
    /// are one motif, then the fewest brackets, then brackets that begin earliest. Writing it out gives exactly <paramref name="runs"/>.
    /// Takes time in the order of runs² × log runs.
    /// </summary>
    /// <param name="runs">The runs of a row; neighbours differ.</param>
    /// <param name="motifEnds">Number of ends of the motif, which a bracket should cover if it can.</param>
    public static Writing Of(Sequence<Run> runs, int motifEnds)
    {
        ArgumentNullException.ThrowIfNull(runs);
        var count = runs.Count;
        var best = new Choice[count + 1];
        var endsBefore = EndsBefore(runs);
        var matches = MatchLengths(runs);
        for (var at = count - 1; at >= 0; at--)
        {
            best[at] = new Choice(best[at + 1].Cost.Plus(1, 0, 0), 1, 1);
            for (var period = 2; at + (2 * period) <= count; period += 2)
            {
                var most = (matches[period / 2][at] / period) + 1;
                var isMotif = endsBefore[at + period] - endsBefore[at] == motifEnds ? 1 : 0;
                for (var times = most; times >= 2; times--)
                {
                    var cost = best[at + (period * times)].Cost.Plus(period + 1, isMotif, 1);
                    if (cost.IsNoWorseThan(best[at].Cost))
                    {
                        best[at] = new Choice(cost, period, times);
                    }
                }
            }
        }

        return Assemble(runs, best);
    }

    private static Writing Assemble(Sequence<Run> runs, Choice[] best)
    {
        var items = new List<WritingItem>();
        for (var at = 0; at < runs.Count;)
        {
            var (period, times) = (best[at].Period, best[at].Times);
            items.Add(times == 1
                ? new RunItem(runs[at])
                : new BracketItem(Sequence.Of(runs.AsSpan().Slice(at, period)), times));
            at += period * times;
        }

        return new Writing(items.ToSequence());
    }

    private static int[] EndsBefore(Sequence<Run> runs)
    {
        var sums = new int[runs.Count + 1];
        for (var i = 0; i < runs.Count; i++)
        {
            sums[i + 1] = sums[i] + runs[i].Count;
        }

        return sums;
    }

    // matches[p / 2][i]: how many runs from i on equal the run p further on. Strokes alternate, so only even periods can repeat.
    private static int[][] MatchLengths(Sequence<Run> runs)
    {
        var count = runs.Count;
        var matches = new int[(count / 4) + 1][];
        for (var period = 2; 2 * period <= count; period += 2)
        {
            var lengths = new int[count + 1];
            for (var i = count - period - 1; i >= 0; i--)
            {
                lengths[i] = runs[i] == runs[i + period] ? lengths[i + 1] + 1 : 0;
            }

            matches[period / 2] = lengths;
        }

        return matches;
    }

    private readonly record struct Choice(Cost Cost, int Period, int Times);

    private readonly record struct Cost(int Items, int MotifBrackets, int Brackets)
    {
        public Cost Plus(int items, int motifBrackets, int brackets) =>
            new(Items + items, MotifBrackets + motifBrackets, Brackets + brackets);

        public bool IsNoWorseThan(Cost other)
        {
            if (Items != other.Items)
            {
                return Items < other.Items;
            }

            return MotifBrackets != other.MotifBrackets ? MotifBrackets > other.MotifBrackets : Brackets <= other.Brackets;
        }
    }
}
