using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A small picture of a piece for lists: its first rows and ends as plain cells.</summary>
internal static class MotifPicture
{
    private const int Most = 24;
    private const double Cell = 2;

    public static string Svg(Piece piece, string id)
    {
        var rows = Math.Min(Most, piece.Rows.Count);
        var columns = Math.Min(Most, piece.PatternEnds);
        var grid = BitGrid.Create(rows, columns, (row, column) => piece.At(rows - row, column + piece.FloatingPerSide) == Stroke.Over);
        var shapes = new List<Shape> { new Box(0, 0, columns * Cell, rows * Cell, Shade.White) };
        Glyphs.Add(shapes, grid, new CellArea(0, 0, Cell), piece.Document.Glyphs);
        return SvgText.Of(new Drawing(columns * Cell, rows * Cell, shapes.ToSequence()), piece.Document.Title, "", id);
    }
}
