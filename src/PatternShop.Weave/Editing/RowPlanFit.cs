namespace PatternShop.Weave;

/// <summary>
/// Lets a row plan follow the rows of the motif. A step that wove every row weaves every row again. Any other weaves the rows that it wove,
/// under their new numbers, and those that came between them.
/// </summary>
/// <param name="before">Rows of the motif before.</param>
/// <param name="splice">What becomes of them.</param>
internal sealed class RowPlanFit(int before, Splice splice)
{
    private readonly int _after = before - splice.Removed + splice.Added;
    private readonly List<Consequence> _consequences = [];

    /// <summary>What <see cref="Of"/> changed besides the numbers of a step that weaves every row, in the order of the plan.</summary>
    public Sequence<Consequence> Consequences => _consequences.ToSequence();

    public RowPlan Of(RowPlan plan)
    {
        var steps = plan.Steps.Index().SelectMany(step => Step(step.Item, step.Index + 1)).ToSequence();
        if (!steps.Any(Weaves))
        {
            _consequences.Add(new PlanBegunAnew(_after));
            return plan with { Steps = [.. steps, new ChartRows(1, _after, 1)] };
        }

        if (splice.Added > 0 && !ChartRowsOf(steps).Any(IsWoven))
        {
            _consequences.Add(new RowsNotWoven(splice.At, splice.At + splice.Added - 1));
        }

        return plan with { Steps = steps };
    }

    private IEnumerable<RowStep> Step(RowStep step, int number)
    {
        if (step is not Repeat repeat)
        {
            return Simple((SimpleStep)step, number);
        }

        var inner = repeat.Steps.SelectMany(simple => Simple(simple, number)).ToSequence();
        return inner.Count > 0 ? [repeat with { Steps = inner }] : [];
    }

    private IEnumerable<SimpleStep> Simple(SimpleStep step, int number)
    {
        if (step is not ChartRows rows)
        {
            return [step];
        }

        var fitted = Fit(rows);
        if (rows.Count < before && fitted != rows)
        {
            _consequences.Add(Said(number, rows, fitted));
        }

        return fitted is null ? [] : [fitted];
    }

    private static Consequence Said(int step, ChartRows rows, ChartRows? fitted) =>
        fitted is null || fitted.Count < rows.Count ? new StepCut(step, rows, fitted)
        : fitted.Count > rows.Count ? new StepGrown(step, rows, fitted)
        : new StepRenumbered(step, rows, fitted);

    private ChartRows? Fit(ChartRows rows)
    {
        var (low, high) = rows.Count == before
            ? (1, _after)
            : (First(Math.Min(rows.First, rows.Last)), Last(Math.Max(rows.First, rows.Last)));
        return low > high ? null : rows.First <= rows.Last ? rows with { First = low, Last = high } : rows with { First = high, Last = low };
    }

    // the number of a row or, where it is gone, of the one that stands in its place or below it
    private int First(int row) => splice.NumberOf(row) ?? splice.At + splice.Added;

    private int Last(int row) => splice.NumberOf(row) ?? splice.At - 1;

    private bool IsWoven(ChartRows rows) => Math.Min(rows.First, rows.Last) <= splice.At && splice.At <= Math.Max(rows.First, rows.Last);

    private static IEnumerable<ChartRows> ChartRowsOf(IEnumerable<RowStep> steps) =>
        steps.SelectMany(step => step is Repeat repeat ? repeat.Steps.AsEnumerable() : [(SimpleStep)step]).OfType<ChartRows>();

    private static bool Weaves(RowStep step) => step is Repeat repeat ? repeat.Steps.Any(Weaves) : step is ChartRows or PlainRows;
}
