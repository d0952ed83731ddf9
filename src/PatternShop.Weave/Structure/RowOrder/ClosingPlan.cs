namespace PatternShop.Weave;

/// <summary>Writes the closing rows that make top and bottom mirror into a row plan.</summary>
internal static class ClosingPlan
{
    /// <summary>
    /// The edit that gives the repeated rows as many closing rows as <see cref="ClosingRows.Fewest(Piece)"/> says; null when they mirror
    /// as they stand or no closing rows help. Rows that already continue the repeated ones are replaced; whatever comes after them stays.
    /// Edge stitches among the repeated rows are not worked again.
    /// </summary>
    public static OrderRows? Of(Piece piece)
    {
        if (ClosingRows.Fewest(piece) is not { } closing)
        {
            return null;
        }

        var plan = piece.Document.Rows;
        var band = piece.Bands.First(band => band.Kind == BandKind.Repeated);
        var at = piece.Rows[band.FirstRow - 1].Step;
        var once = ((Repeat)plan.Steps[at]).Steps.Where(step => step is not EdgeStitch).ToList();
        var present = Continuing(plan, at, once);
        if (IsClosed(piece, band, present, closing))
        {
            return null;
        }

        var steps = plan.Steps.Take(at + 1).Concat(First(once, closing)).Concat(After(plan.Steps.Skip(at + 1), present.Rows)).ToSequence();
        var edit = new OrderRows(OrderWay.Close, closing, plan with { Steps = steps });
        return edit.Apply(piece.Document) is EditResult.Done done && IsClosed(Piece.Of(done.Document), band, Continuing(edit.Rows, at, once), closing) ? edit : null;
    }

    // Closing rows may be followed by others, such as a hem, and these may happen to go on in the same way.
    private static bool IsClosed(Piece piece, Band band, (int Rows, bool IsAll) present, int closing) =>
        Mirrors(piece, band, present.Rows) || (!present.IsAll && present.Rows >= closing && Mirrors(piece, band, closing));

    // How many of the rows after the repeated ones go on as these would, and whether no others follow.
    private static (int Rows, bool IsAll) Continuing(RowPlan plan, int at, List<SimpleStep> once)
    {
        var (ring, after) = (RowFolding.Unroll(once), RowFolding.Unroll(plan.Steps.Skip(at + 1)));
        var count = 0;
        while (count < after.Count && after[count] == ring[count % ring.Count])
        {
            count++;
        }

        return (count, count == after.Count);
    }

    private static bool Mirrors(Piece piece, Band band, int closing)
    {
        var names = SourceNames.Of(piece);
        for (int low = band.FirstRow - 1, high = band.LastRow + closing - 1; low < high; low++, high--)
        {
            if (names[piece.Rows[low].Reading] != names[piece.Rows[high].Reading])
            {
                return false;
            }
        }

        return true;
    }

    private static IEnumerable<RowStep> First(List<SimpleStep> once, int rows)
    {
        for (var at = 0; rows > 0; at = (at + 1) % once.Count)
        {
            var count = Math.Min(rows, Rows(once[at]));
            yield return Part(once[at], 0, count);
            rows -= count;
        }
    }

    private static IEnumerable<RowStep> After(IEnumerable<RowStep> steps, int rows)
    {
        foreach (var step in steps)
        {
            // only the repeated rows are woven several times
            foreach (var one in rows > 0 && step is Repeat repeat ? repeat.Steps.Cast<RowStep>() : [step])
            {
                var gone = one is SimpleStep simple ? Math.Min(rows, Rows(simple)) : 0;
                rows -= gone;
                if (gone == 0)
                {
                    yield return one;
                }
                else if (gone < Rows((SimpleStep)one))
                {
                    yield return Part((SimpleStep)one, gone, Rows((SimpleStep)one) - gone);
                }
            }
        }
    }

    private static int Rows(SimpleStep step) => step switch
    {
        ChartRows chart => chart.Count,
        PlainRows plain => plain.Count,
        _ => 0,
    };

    private static SimpleStep Part(SimpleStep step, int after, int count)
    {
        if (step is PlainRows plain)
        {
            return plain with { Count = count };
        }

        var chart = (ChartRows)step;
        var stride = chart.First <= chart.Last ? 1 : -1;
        var first = chart.First + (after * stride);
        return chart with { First = first, Last = first + ((count - 1) * stride) };
    }
}
