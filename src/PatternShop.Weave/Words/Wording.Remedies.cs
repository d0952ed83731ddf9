namespace PatternShop.Weave;

/// <summary>Words about what mends a finding, and about the edges that serve best.</summary>
public partial class Wording
{
    /// <summary>What a remedy does, as a step of undo names it: "start at the right". An edit of another kind than mends so goes by its own name.</summary>
    public string MendName(Mend mend)
    {
        ArgumentNullException.ThrowIfNull(mend);
        return (mend.Kind, mend.Edit) switch
        {
            (MendKind.OtherSide, SetRowPlan plan) when mend.Number >= 1 && mend.Number <= plan.Rows.Wefts.Count => StartNamed(plan.Rows, mend.Number),
            (MendKind.Edges, SetFloating { Floating: { } floating }) => $"use floating selvedges, {FloatingNamed(floating)}",
            (MendKind.WeavePlain, _) => "weave it plain",
            (MendKind.TieDown, SetCells { Cells.Count: > 0 } cells) => TieNamed(cells.Cells),
            (MendKind.DoubleRows, _) => "write the repeated rows twice",
            (MendKind.WholeMotif, _) => "weave the whole motif",
            (MendKind.LastRowOnce, _) => "weave the last row once, at the end",
            (MendKind.Mirror, SetWidth width) => $"begin at end {Number(width.Width.Offset + 1)} with {(width.Width.Balance == 0 ? "no balance end" : BalanceNamed(width.Width.Balance))}",
            _ => EditName(mend.Edit),
        };
    }

    /// <summary>The name of a remedy as a button bears it.</summary>
    public string RemedyName(Remedy remedy)
    {
        ArgumentNullException.ThrowIfNull(remedy);
        return Capital(MendName(remedy.Edit));
    }

    /// <summary>What a remedy changes besides, in sentences.</summary>
    public string AftermathText(Piece piece, Finding finding, Remedy remedy)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(remedy);
        var after = remedy.Aftermath;
        return string.Join(' ', new[]
        {
            after.Left > 0 ? $"Leaves {Number(after.Left)}." : "",
            after.Ends != piece.Ends ? $"{Count(after.Ends, "end", "ends")} instead of {Number(piece.Ends)}, {LengthBoth(after.Width)} on the loom." : "",
            after.Rows != piece.Rows.Count ? $"{Rows(after.Rows)} instead of {Number(piece.Rows.Count)}." : "",
            after.Ends == piece.Ends && after.Rows == piece.Rows.Count ? Otherwise(after.RowsOtherwise, after.Rows) : "",
            after.AlsoMends.Count > 0 ? $"Also mends {Together(after.AlsoMends.Select(CheckName))}." : "",
            after.Brings.Count > 0 ? $"But it brings {Together(after.Brings.Select(BroughtNamed))}." : "",
        }.Where(sentence => sentence.Length > 0));
    }

    public string EdgeAdviceTitle => "Which edges and which start serve best?";

    /// <summary>One way of edges and start: "Alike, first under; start at the right".</summary>
    public string EdgeOptionName(EdgeOption option)
    {
        ArgumentNullException.ThrowIfNull(option);
        var floating = option.Floating is { } edges ? FloatingNamed(edges) : "no floating selvedges";
        return $"{Capital(floating)}; {StartsNamed(option.Wefts)}";
    }

    /// <summary>What speaks for and against a way of edges and start.</summary>
    public string EdgeOptionWhy(EdgeOption option)
    {
        ArgumentNullException.ThrowIfNull(option);
        return Capital(string.Join("; ", new[]
        {
            TurnsHeld(option),
            option.Idle > 0 ? $"{Count(option.Idle, "floating selvedge is", "floating selvedges are")} not woven in" : "",
            option.Unlike > 0 ? "repeated rows read otherwise every other time" : "",
            option.EdgeFloat > 1 ? $"longest float at the edge {Number(option.EdgeFloat)}" : "no float at the edge",
            option.Mirrored ? "left and right mirror each other" : "",
            Count(option.Ends, "end", "ends"),
        }.Where(part => part.Length > 0))) + ".";
    }

    /// <summary>The step of undo that takes a way of edges and start.</summary>
    public string EdgesName(SetEdges edges)
    {
        ArgumentNullException.ThrowIfNull(edges);
        var floating = edges.Floating is { } ways ? $"floating selvedges {FloatingNamed(ways)}" : "no floating selvedges";
        return $"use {floating}, {StartsNamed(edges.Wefts)}";
    }

    private string TurnsHeld(EdgeOption option) => (option.Turns, option.NotWrapped) switch
    {
        (0, _) => "no turns",
        (_, 0) => "every turn wrapped",
        _ => $"{Number(option.NotWrapped)} of {Count(option.Turns, "turn", "turns")} not wrapped",
    };

    private string FloatingNamed(FloatingSelvedges floating) =>
        $"{(floating.Edges == EdgeWay.Alike ? "alike" : "entering")}, first {Name(floating.First)}";

    private string StartNamed(RowPlan plan, int weft) =>
        $"start {(plan.UsedWefts().Count == 1 ? "" : $"weft {Number(weft)} ")}at the {Name(plan.Wefts[weft - 1].Start)}";

    private string StartsNamed(Sequence<Weft> wefts) => wefts.Distinct().Count() == 1
        ? $"start at the {Name(wefts[0].Start)}"
        : "start " + Together(wefts.Select((weft, at) => $"weft {Number(at + 1)} at the {Name(weft.Start)}"));

    private string TieNamed(BitGrid cells)
    {
        if (cells.Count > 1)
        {
            return $"tie it down at {Number(cells.Count)} cells of the motif";
        }

        var row = Enumerable.Range(0, cells.Rows).First(row => cells.RowWords(row).ContainsAnyExcept(0UL));
        var end = Enumerable.Range(0, cells.Columns).First(end => cells[row, end]);
        return $"tie it down at row {Number(row + 1)}, end {Number(end + 1)} of the motif";
    }

    private string Otherwise(int rows, int of) => rows switch
    {
        0 => "Every row reads as before.",
        _ when rows == of => "Every row reads otherwise.",
        1 => $"1 of {Rows(of)} reads otherwise.",
        _ => $"{Number(rows)} of {Rows(of)} read otherwise.",
    };

    private string BroughtNamed(Brought brought)
    {
        var weight = brought.Weight switch { Weight.Fault => "a fault", Weight.Caution => "a caution", _ => "a note" };
        return $"{weight}, {CheckName(brought.Check)}";
    }

    private static string Together(IEnumerable<string> texts)
    {
        var all = texts.ToList();
        return all.Count == 1 ? all[0] : $"{string.Join(", ", all.SkipLast(1))} and {all[^1]}";
    }
}
