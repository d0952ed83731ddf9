namespace PatternShop.Weave;

/// <summary>Finds what mends findings. Whatever is offered was tried on the whole piece first.</summary>
public static class Remedies
{
    /// <summary>Remedies of one finding at most.</summary>
    public const int Most = 3;

    /// <summary>Every finding of a piece with its remedies, in the order of <see cref="Checks.Of"/>.</summary>
    public static Sequence<Advice> Of(Piece piece) => Of(piece, Checks.Of(piece));

    /// <summary>The same for findings that are known already.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="findings">All its findings.</param>
    public static Sequence<Advice> Of(Piece piece, Sequence<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(findings);
        var trials = new Trials(piece, findings);
        return findings.Select(finding => new Advice(finding, Of(trials, finding))).ToSequence();
    }

    // One of a kind is enough, but for ways to mirror, which put different figures in the middle; what mends in part is no use beside what mends the whole.
    private static Sequence<Remedy> Of(Trials trials, Finding finding)
    {
        var tried = Tried(trials, finding)
            .OrderBy(remedy => remedy.Aftermath.BringsFault)
            .ThenBy(remedy => remedy.Aftermath.Left > 0)
            .GroupBy(remedy => remedy.Edit.Kind)
            .SelectMany(kind => kind.Take(kind.Key == MendKind.Mirror ? Most : 1))
            .ToList();
        var whole = tried.Exists(remedy => remedy.Aftermath is { Left: 0, BringsFault: false });
        return tried.Where(remedy => !whole || remedy.Aftermath.Left == 0).Take(Most).ToSequence();
    }

    // Each trial weaves the whole piece: where cells are changed, other ways to do it are tried only as long as none serves.
    private static IEnumerable<Remedy> Tried(Trials trials, Finding finding)
    {
        var served = new HashSet<MendKind>();
        foreach (var mend in MendsFor(trials, finding).Distinct())
        {
            if (!served.Contains(mend.Kind) && trials.Try(mend, finding) is { } remedy)
            {
                if (remedy.Aftermath is { BringsFault: false } after && (mend.Kind == MendKind.TieDown || (mend.Kind == MendKind.WeavePlain && after.Left == 0)))
                {
                    served.Add(mend.Kind);
                }

                yield return remedy;
            }
        }
    }

    // What might help, the first to be offered first; only a trial says whether it does.
    private static IEnumerable<Mend> MendsFor(Trials trials, Finding finding) => finding switch
    {
        NothingDrawn => CellMends.PlainEverywhere(trials.Piece),
        LooseThreads loose => [.. CellMends.Plain(trials.Piece, loose), .. PlanMends.WholeMotif(trials.Piece)],
        LayersApart => CellMends.TieLayers(trials.Piece),
        FloatingIdle => trials.Edges,
        TurnsNotWrapped turns => [EdgeMends.OtherSide(trials.Piece, turns.Weft), .. trials.Edges],
        SeamBreaks seam => [.. PlanMends.WholeMotif(trials.Piece, seam.Step), .. PlanMends.LastRowOnce(trials.Piece, seam.Step)],
        FloatsTooLong floats => CellMends.TieFloats(trials.Piece, floats),
        TimesUnlike unlike => [.. trials.Edges, .. PlanMends.DoubleRows(trials.Piece, unlike.Step)],
        NotMirrored => WidthMends.Mirror(trials.Piece),
        _ => [],
    };
}
