namespace PatternShop.Weave;

/// <summary>Top or bottom of the chart, row 1 being at the bottom.</summary>
public enum RowEdge
{
    Bottom,
    Top,
}

/// <summary>
/// Gives the motif another size. New cells are under. What depends on the size follows: a step of the row plan that wove all rows weaves all
/// rows again, any other weaves what is left of its rows, and what the maker bound to single rows follows (<see cref="RowBond"/>). Where ends
/// come or go at the right the offset is taken modulo the ends; at the left the pattern goes on beginning at the same end.
/// </summary>
/// <param name="Rows">Rows of the motif from now on.</param>
/// <param name="Ends">Ends of the motif from now on.</param>
public sealed record ResizeMotif(int Rows, int Ends) : Edit
{
    /// <summary>Where ends come or go.</summary>
    public Side EndsAt { get; init; } = Side.Right;

    /// <summary>Where rows come or go.</summary>
    public RowEdge RowsAt { get; init; } = RowEdge.Top;

    private protected override EditResult Change(PatternDocument document)
    {
        if (MotifFit.Refusal(Rows, Ends) is { } refused)
        {
            return refused;
        }

        var motif = document.Motif;
        // the offset is taken modulo the ends first, for ends that go at the right take it with them
        var before = EndsAt == Side.Right ? document with { Width = document.Width with { Offset = document.Width.Offset % Ends } } : document;
        var done = (EditResult.Done)MotifFit.Spliced(
            before,
            Splice.Between(motif.Rows, Rows, RowsAt == RowEdge.Top),
            Splice.Between(motif.Columns, Ends, EndsAt == Side.Right));
        var (own, rest) = Parted(done.Consequences);
        return done with
        {
            Consequences =
            [
                .. own,
                .. motif.Count > done.Document.Motif.Count ? (Consequence[])[new CellsCut(motif.Count - done.Document.Motif.Count)] : [],
                .. document.Width.Offset == before.Width.Offset ? (Consequence[])[] : [new OffsetMoved(document.Width.Offset, before.Width.Offset)],
                .. rest,
            ],
        };
    }

    // what the maker wrote comes first
    private static (IEnumerable<Consequence> Own, IEnumerable<Consequence> Others) Parted(Sequence<Consequence> consequences) =>
        (consequences.TakeWhile(IsOwn), consequences.SkipWhile(IsOwn));

    private static bool IsOwn(Consequence consequence) => consequence is RowWordsCut or VideoMoved or PhotoMoved;
}

/// <summary>Puts another motif in the place of the document's own, as <see cref="ResizeMotif"/> does with its size.</summary>
public sealed record ReplaceMotif(BitGrid Motif) : Edit
{
    private protected override EditResult Change(PatternDocument document) => MotifFit.Replaced(document, Motif);
}
