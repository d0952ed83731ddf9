namespace PatternShop.Weave;

/// <summary>Names what readings do at the pattern ends: two have the same name exactly when the weft does the same at every one.</summary>
internal static class SourceNames
{
    /// <summary>For every reading of the piece its name.</summary>
    public static int[] Of(Piece piece) => ThreadNames.OfRows(PatternCells(piece));

    /// <summary>Distinct readings × pattern ends, true where the weft is over.</summary>
    public static BitGrid PatternCells(Piece piece) => piece.Cells.ColumnsOf(piece.FloatingPerSide, piece.PatternEnds);
}
