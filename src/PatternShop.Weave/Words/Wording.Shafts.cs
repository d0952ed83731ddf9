namespace PatternShop.Weave;

/// <summary>Words of the shaft plan.</summary>
public partial class Wording
{
    public string ShaftsTitle => "For a loom with shafts";

    /// <summary>Who needs it.</summary>
    public string ShaftsForWhom => "Weaving with a needle needs none of this.";

    public string EndOrderTitle => "Order of ends";

    public string TieUpTitle => "Tie-up";

    public string LiftsTitle => "Lifts for each row";

    public string EndsColumn => "Ends";

    public string ShaftsColumn => "Shafts, from the left";

    public string LiftColumn => "Lift";

    public string RaisesColumn => "Raises shafts";

    public string RowsColumn => "Rows";

    public string LiftsColumn => "Lifts, one a row";

    /// <summary>What a lift raises when every end stays down.</summary>
    public string NoShaft => "none";

    /// <summary>How large the plan is, and what a lift does.</summary>
    public string ShaftsText(Piece piece, ShaftPlan plan)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(plan);
        var floating = piece.FloatingPerSide > 0 ? " The floating selvedges are on no shaft." : "";
        return $"{Count(plan.Shafts, "shaft", "shafts")}, {Count(plan.TieUp.Count, "lift", "lifts")}. A lift raises some shafts: their ends come on top and the weft goes under them; it goes over all other ends.{floating}";
    }

    /// <summary>"1–8".</summary>
    public string FromTo(int first, int last) => first == last ? Number(first) : $"{Number(first)}–{Number(last)}";

    /// <summary>"as ends 1–8, 2 times more".</summary>
    public string AsEnds(int first, int last, int times) => As(Range("end", "ends", first, last), times);

    /// <summary>"as rows 1–8, once more".</summary>
    public string AsRows(int first, int last, int times) => As(Range("row", "rows", first, last), times);

    private string As(string threads, int times) => $"as {threads}, {Times(times)} more";
}
