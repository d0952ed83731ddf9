namespace PatternShop.Weave.Tests;

/// <summary>What the best writing of a row costs, from its definition: every period and every number of times at every level.</summary>
internal static class SlowWriting
{
    public static WritingRank Cost(Sequence<Run> runs, int motifEnds, int levels) =>
        new Search([.. runs], motifEnds).Best(0, runs.Count, levels);

    private sealed class Search(Run[] runs, int motifEnds)
    {
        private readonly Dictionary<(int, int, int), WritingRank> _known = [];

        public WritingRank Best(int from, int to, int levels)
        {
            if (levels == 0 || from == to)
            {
                return new WritingRank(to - from, 0, 0, 0);
            }

            if (_known.TryGetValue((from, to, levels), out var known))
            {
                return known;
            }

            var best = Best(from + 1, to, levels) + new WritingRank(1, 0, 0, 0);
            for (var period = 1; from + (2 * period) <= to; period++)
            {
                for (var times = 2; from + (times * period) <= to && Repeats(from, period, times); times++)
                {
                    var inside = Best(from, from + period, levels - 1);
                    var ends = runs.AsSpan(from, period).ToArray().Sum(run => run.Count);
                    var bracket = new WritingRank(1, ends == motifEnds ? 1 : 0, inside.Brackets > 0 ? 1 : 0, 1);
                    var cost = inside + bracket + Best(from + (times * period), to, levels);
                    best = cost.Order.CompareTo(best.Order) < 0 ? cost : best;
                }
            }

            return _known[(from, to, levels)] = best;
        }

        private bool Repeats(int from, int period, int times) =>
            runs.AsSpan(from, period).SequenceEqual(runs.AsSpan(from + ((times - 1) * period), period));
    }
}
