namespace PatternShop.Weave;

/// <summary>What a piece weaves of its motif.</summary>
internal static class WovenChart
{
    /// <summary>Whether any row of the motif is woven; a piece may consist of plain rows.</summary>
    public static bool Any(Piece piece) => piece.Keys.Any(key => key.Source.Kind == RowKind.Chart);

    /// <summary>Whether plain rows are woven among those of the motif.</summary>
    public static bool HasPlain(Piece piece) => piece.Keys.Any(key => key.Source.Kind == RowKind.Plain);
}
