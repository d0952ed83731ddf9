namespace PatternShop.Weave;

/// <summary>Finds the shortest writing of a row.</summary>
public static class ShortestWriting
{
    /// <summary>Brackets that may stand inside one another.</summary>
    public const int Levels = 2;

    /// <summary>
    /// The writing with the fewest items, with brackets inside brackets where that saves items. Among equally short ones: the most
    /// brackets that are one motif, then the fewest brackets with brackets in them, then the fewest brackets, then brackets that
    /// begin earliest. Writing it out gives exactly <paramref name="runs"/>.
    /// </summary>
    /// <param name="runs">The runs of a row, at most <see cref="MostRuns"/>; neighbours differ in stroke.</param>
    /// <param name="motifEnds">Number of ends of the motif, which a bracket should cover if it can.</param>
    /// <param name="levels">Brackets that may stand inside one another: 1 or 2.</param>
    /// <exception cref="ArgumentException">Too many runs, or neighbours of one stroke.</exception>
    public static Writing Of(Sequence<Run> runs, int motifEnds, int levels = Levels) => new WritingSearch(motifEnds).Of(runs, levels);

    /// <summary>Most runs that can be written.</summary>
    public const int MostRuns = 30_000;
}
