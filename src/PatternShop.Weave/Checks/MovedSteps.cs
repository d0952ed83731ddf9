namespace PatternShop.Weave;

/// <summary>
/// Finds the steps of a row plan again after an edit that put others in the place of some: what is found of a step must not seem to be mended there and
/// brought elsewhere because the step has another number now.
/// </summary>
/// <param name="Kept">How many steps at the beginning are as they were.</param>
/// <param name="MovedFrom">The first of those at the end, from 0 in the plan after the edit, that are as they were.</param>
/// <param name="By">How many more steps the plan has after the edit.</param>
internal readonly record struct MovedSteps(int Kept, int MovedFrom, int By)
{
    /// <summary>No step moved.</summary>
    public static MovedSteps None { get; } = new(int.MaxValue, int.MaxValue, 0);

    public static MovedSteps Between(Sequence<RowStep> before, Sequence<RowStep> after)
    {
        var shorter = Math.Min(before.Count, after.Count);
        var kept = 0;
        while (kept < shorter && before[kept] == after[kept])
        {
            kept++;
        }

        var moved = 0;
        while (moved < shorter - kept && before[before.Count - 1 - moved] == after[after.Count - 1 - moved])
        {
            moved++;
        }

        return new MovedSteps(kept, after.Count - moved, after.Count - before.Count);
    }

    /// <summary>The name that a finding after the edit would have had before it; steps that are new there go by the first that they stand for.</summary>
    public (CheckKind Check, int Which) NameOf(Finding finding) => finding is SeamBreaks or TimesUnlike
        ? (finding.Check, Before(finding.Which))
        : finding.Name;

    private int Before(int step) => step < Kept ? step : step >= MovedFrom ? step - By : Kept;
}
