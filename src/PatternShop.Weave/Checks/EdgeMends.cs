namespace PatternShop.Weave;

/// <summary>Edits of edges and starts.</summary>
internal static class EdgeMends
{
    /// <summary>One weft starts at the other side.</summary>
    public static Mend OtherSide(Piece piece, int weft)
    {
        var rows = piece.Document.Rows;
        var wefts = rows.Wefts.Select((one, at) => at == weft - 1 ? new Weft(one.Start.Other()) : one).ToSequence();
        return new Mend(MendKind.OtherSide, weft, new SetRowPlan(rows with { Wefts = wefts }));
    }

    /// <summary>Every other way of the floating selvedges with the starts as they are, the best first.</summary>
    public static IEnumerable<Mend> Edges(Piece piece) =>
        from option in EdgeAdvice.Of(piece, piece.Document.Rows.Wefts)
        where option.Floating is not null && option.Floating != piece.Document.Width.Floating
        select new Mend(MendKind.Edges, 0, new SetFloating(option.Floating));
}
