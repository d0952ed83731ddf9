namespace PatternShop.Weave;

/// <summary>
/// Everything that can be found wrong, or worth knowing, in a piece before it is woven. What depends on yarn and loom is
/// not judged here.
/// </summary>
public static class Checks
{
    // In the order of CheckKind.
    private static readonly Func<Piece, IEnumerable<Finding>>[] All =
    [
        LooseThreadsCheck.Of,
        FallsApartCheck.Of,
        IdleFloatingCheck.Of,
        TurnsCheck.Of,
        SeamCheck.Of,
        FloatsCheck.Of,
        RepeatsCheck.Of,
        MirrorCheck.Of,
    ];

    /// <summary>All findings, the gravest first; a motif on which nothing is drawn yet has one only.</summary>
    public static Sequence<Finding> Of(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return BlankCheck.Of(piece) is { } blank
            ? [blank]
            : All.SelectMany(check => check(piece)).OrderBy(finding => finding.Weight).ThenBy(finding => finding.Name).ToSequence();
    }
}
