namespace PatternShop.Weave;

/// <summary>Fits a row plan to a motif that has another number of rows.</summary>
internal sealed class RowPlanFit(int before, int after)
{
    private readonly List<Consequence> _consequences = [];

    /// <summary>What was cut by <see cref="Of"/>, in the order of the plan.</summary>
    public Sequence<Consequence> Consequences => _consequences.ToSequence();

    public RowPlan Of(RowPlan plan)
    {
        var steps = plan.Steps.Index().SelectMany(step => Step(step.Item, step.Index + 1)).ToSequence();
        if (steps.Any(Weaves))
        {
            return plan with { Steps = steps };
        }

        _consequences.Add(new PlanBegunAnew(after));
        return plan with { Steps = [.. steps, new ChartRows(1, after, 1)] };
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
        var cut = fitted is null || fitted.Count < rows.Count;
        if (cut && rows.Count < before)
        {
            _consequences.Add(new StepCut(number, rows, fitted));
        }

        return fitted is null ? [] : [fitted];
    }

    private ChartRows? Fit(ChartRows rows)
    {
        var (low, high) = (Math.Min(rows.First, rows.Last), Math.Max(rows.First, rows.Last));
        if (low > after)
        {
            return null;
        }

        var top = rows.Count == before ? after : Math.Min(high, after);
        return rows.First <= rows.Last ? rows with { First = low, Last = top } : rows with { First = top, Last = low };
    }

    private static bool Weaves(RowStep step) => step is Repeat repeat ? repeat.Steps.Any(Weaves) : step is ChartRows or PlainRows;
}
