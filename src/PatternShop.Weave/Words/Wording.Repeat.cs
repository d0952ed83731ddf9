namespace PatternShop.Weave;

/// <summary>Words about repeat and mirrors, and about what is proposed to make them whole.</summary>
public partial class Wording
{
    private const int MostItems = 6;

    public string RepeatTitle => "Repeat and mirrors";

    public string MirrorsHeading => "Ways to mirror left and right";

    public string OrdersHeading => "For the order of rows";

    public string NothingRepeats => "Nothing is drawn yet.";

    /// <summary>How ends and rows are counted: "Ends: a multiple of 10, plus 1. Rows: a multiple of 10, plus 1 closing row."</summary>
    public string CountsRule(Piece piece) => $"Ends: {EndsRule(piece)}. Rows: {RowsRule(piece)}.";

    /// <summary>The name of a way to mirror, as a button bears it.</summary>
    public string MirrorOptionName(MirrorOption option)
    {
        ArgumentNullException.ThrowIfNull(option);
        return Capital(MendName(option.Edit));
    }

    /// <summary>What is in the middle: "End 1 of the motif is in the middle. 21 ends in all instead of 20: a multiple of 10, plus 1."</summary>
    public string MirrorOptionText(Piece piece, MirrorOption option)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(option);
        var width = piece.Document.Width;
        var middle = option.Choice.Middle;
        var motif = piece.Document.Motif.Columns;
        var place = middle.IsOnThread
            ? $"End {Number(middle.Thread + 1)} of the motif is in the middle"
            : $"The middle is {PlaceText(middle, motif, "end", "ends")} of the motif";
        var ends = (motif * width.Repeats) + option.Choice.Way.Balance + (2 * piece.FloatingPerSide);
        return $"{place}. {Count(ends, "end", "ends")} in all{(ends == piece.Ends ? "" : $" instead of {Number(piece.Ends)}")}: {CountingRule(motif, option.Choice.Way.Balance)}{(piece.FloatingPerSide > 0 ? ", plus 2 floating selvedges" : "")}.";
    }

    /// <summary>Ways to mirror that are not listed: "and 2 more beginnings that look the same".</summary>
    public string MirrorsAlike(int count) => $"and {Count(count, "more beginning that looks", "more beginnings that look")} the same";

    /// <summary>What an order of rows that was worked out does, as undo names it.</summary>
    public string OrderName(OrderRows order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return (order.Way, order.Number) switch
        {
            (OrderWay.Close, 0) => "weave no closing rows",
            (OrderWay.Close, _) => $"weave {Count(order.Number, "closing row", "closing rows")}",
            _ => $"write the order of rows with {Count(order.Number, "item", "items")}",
        };
    }

    /// <summary>The same as a button bears it.</summary>
    public string OrderProposal(OrderRows order) => Capital(OrderName(order));

    /// <summary>What an order of rows that was worked out is good for: what it says of the piece, and the order itself.</summary>
    public string OrderText(Piece piece, OrderRows order)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(order);
        var why = order.Way == OrderWay.Close
            ? ClosingRowsText(order.Number)
            : $"The same rows in the same order, with {Count(order.Number, "item", "items")} instead of {Number(RowFolding.Items(piece.Document.Rows.Steps))}.";
        return $"{why} The order is then: {StepsText(order.Rows.Steps)}.";
    }

    /// <summary>The steps of a row plan, the first of many: "(chart rows 1–8) 3 times, chart row 1, and 2 more".</summary>
    public string StepsText(Sequence<RowStep> steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        var wefts = steps.SelectMany(step => step is Repeat repeat ? repeat.Steps : [(SimpleStep)step]).Select(WeftOf).Where(weft => weft > 0).Distinct().Count();
        return Bounded(steps.Select(step => step is Repeat repeat
            ? $"({Bounded(repeat.Steps.Select(one => StepNamed(one, wefts > 1)))}) {Times(repeat.Times)}"
            : StepNamed((SimpleStep)step, wefts > 1)));
    }

    private string Bounded(IEnumerable<string> names)
    {
        var all = names.ToList();
        return all.Count <= MostItems ? string.Join(", ", all) : $"{string.Join(", ", all.Take(MostItems))} and {Number(all.Count - MostItems)} more";
    }

    private string StepNamed(SimpleStep step, bool namesWeft) => step switch
    {
        ChartRows chart => RowsNamed(chart) + WeftNamed(chart.Weft, namesWeft),
        PlainRows plain => Count(plain.Count, "plain row", "plain rows") + WeftNamed(plain.Weft, namesWeft),
        EdgeStitch stitch => $"“{stitch.Name}”",
        _ => throw new InvalidOperationException($"No words for {step.GetType().Name}."),
    };

    private string WeftNamed(int weft, bool namesWeft) => namesWeft ? $" with weft {Number(weft)}" : "";

    private static int WeftOf(SimpleStep step) => step switch
    {
        ChartRows chart => chart.Weft,
        PlainRows plain => plain.Weft,
        _ => 0,
    };
}
