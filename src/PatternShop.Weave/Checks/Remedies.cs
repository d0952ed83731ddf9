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

    private static Sequence<Remedy> Of(Trials trials, Finding finding) => MendsFor(trials.Piece, finding)
        .Distinct()
        .Select(mend => trials.Try(mend, finding))
        .OfType<Remedy>()
        .OrderBy(remedy => remedy.Aftermath.BringsFault)
        .ThenBy(remedy => remedy.Aftermath.Left > 0)
        .Take(Most)
        .ToSequence();

    // What might help, the first to be offered first; only a trial says whether it does.
    private static IEnumerable<Mend> MendsFor(Piece piece, Finding finding) => finding switch
    {
        NothingDrawn => CellMends.PlainEverywhere(piece),
        LooseThreads loose => [.. CellMends.Plain(piece, loose), .. PlanMends.WholeMotif(piece)],
        LayersApart => CellMends.TieLayers(piece),
        FloatingIdle => EdgeMends.Edges(piece),
        TurnsNotWrapped turns => [EdgeMends.OtherSide(piece, turns.Weft), .. EdgeMends.Edges(piece)],
        SeamBreaks seam => [.. PlanMends.WholeMotif(piece, seam.Step), .. PlanMends.LastRowOnce(piece, seam.Step)],
        FloatsTooLong floats => CellMends.TieFloats(piece, floats),
        TimesUnlike unlike => [.. EdgeMends.Edges(piece), .. PlanMends.DoubleRows(piece, unlike.Step)],
        NotMirrored => WidthMends.Mirror(piece),
        _ => [],
    };
}
