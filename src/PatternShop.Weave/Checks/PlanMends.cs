namespace PatternShop.Weave;

/// <summary>Edits of the row plan.</summary>
internal static class PlanMends
{
    /// <summary>Each time through a repeat weaves its rows twice, so that the number of rows is even; the order of the whole piece stays as it is.</summary>
    public static IEnumerable<Mend> DoubleRows(Piece piece, int step)
    {
        if (piece.Document.Rows.Steps[step] is Repeat repeat)
        {
            Sequence<SimpleStep> twice = [.. repeat.Steps, .. repeat.Steps];
            RowStep[] steps =
            [
                .. repeat.Times / 2 > 1 ? (RowStep[])[new Repeat(repeat.Times / 2, twice)] : [.. twice],
                .. repeat.Times % 2 == 0 ? (RowStep[])[] : [.. repeat.Steps],
            ];
            yield return With(piece, MendKind.DoubleRows, step, steps);
        }
    }

    /// <summary>Where a step weaves a part of the motif, it weaves all of it, in the direction in which it goes.</summary>
    public static IEnumerable<Mend> WholeMotif(Piece piece) =>
        Enumerable.Range(0, piece.Document.Rows.Steps.Count).SelectMany(step => WholeMotif(piece, step));

    /// <summary>The same for one step. Rows that went on where it left off are no longer woven after it.</summary>
    public static IEnumerable<Mend> WholeMotif(Piece piece, int step)
    {
        var steps = piece.Document.Rows.Steps;
        var part = steps[step] is Repeat { Steps: [ChartRows only] } ? only : steps[step] as ChartRows;
        if (part is null || part.Count == piece.Document.Motif.Rows)
        {
            yield break;
        }

        var rows = piece.Document.Motif.Rows;
        var whole = part.First <= part.Last ? part with { First = 1, Last = rows } : part with { First = rows, Last = 1 };
        RowStep now = steps[step] is Repeat repeat ? repeat with { Steps = [whole] } : whole;
        var goesOn = step + 1 < steps.Count && steps[step + 1] is ChartRows next && next.Weft == part.Weft
            && next.First == part.Last + Stride(part) && next.Last == whole.Last;
        yield return With(piece, MendKind.WholeMotif, step, [now], goesOn ? 2 : 1);
    }

    /// <summary>The last row of each time through is left away, and woven once after the last time.</summary>
    public static IEnumerable<Mend> LastRowOnce(Piece piece, int step)
    {
        if (piece.Document.Rows.Steps[step] is Repeat repeat && repeat.Steps[^1] is ChartRows { Count: > 1 } last)
        {
            var shorter = last with { Last = last.Last - Stride(last) };
            var once = last with { First = last.Last };
            yield return With(piece, MendKind.LastRowOnce, step, [repeat with { Steps = [.. repeat.Steps.SkipLast(1), shorter] }, once]);
        }
    }

    private static int Stride(ChartRows rows) => rows.First <= rows.Last ? 1 : -1;

    private static Mend With(Piece piece, MendKind kind, int step, RowStep[] instead, int replaced = 1)
    {
        var plan = piece.Document.Rows;
        var steps = plan.Steps.Take(step).Concat(instead).Concat(plan.Steps.Skip(step + replaced)).ToSequence();
        return new Mend(kind, step + 1, new SetRowPlan(plan with { Steps = steps }));
    }
}
