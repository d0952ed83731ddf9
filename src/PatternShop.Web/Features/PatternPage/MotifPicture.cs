using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// A small picture for lists: so many rows and ends as plain cells. The motif goes on across and the longest repeated rows go on
/// upwards, so that the picture is filled.
/// </summary>
internal static class MotifPicture
{
    public const int Ends = 24;
    public const int Rows = 18;
    private const double Cell = 2;

    public static string Svg(Piece piece, string id)
    {
        var cells = Cells(piece);
        var (width, height) = (cells.Columns * Cell, cells.Rows * Cell);
        var shapes = new List<Shape> { new Box(0, 0, width, height, Shade.White) };
        Glyphs.Add(shapes, cells, new CellArea(0, 0, Cell), piece.Document.Glyphs);
        return SvgText.Of(new Drawing(width, height, shapes.ToSequence()), piece.Document.Title, "", id);
    }

    /// <summary>The cells of the picture, its top row first.</summary>
    public static BitGrid Cells(Piece piece)
    {
        var repeated = piece.Bands.Where(band => band.Kind == BandKind.Repeated).MaxBy(band => band.RowsEachTime);
        var (first, period) = repeated is null ? (1, piece.Rows.Count) : (repeated.FirstRow, repeated.PrintedRows);
        var rows = repeated is null ? Math.Min(Rows, period) : Rows;
        return BitGrid.Create(rows, Ends, (row, end) => IsOver(piece, first + ((rows - 1 - row) % period), end));
    }

    // Beyond its last end a piece goes on as its motif, or as plain weave, does: the end that is one period earlier shows it.
    private static bool IsOver(Piece piece, int number, int end)
    {
        var period = piece.Rows[number - 1].ChartRow is null ? 2 : piece.Document.Motif.Columns;
        var shown = end < piece.PatternEnds ? end : end % period;
        return piece.At(number, Math.Min(shown, piece.PatternEnds - 1) + piece.FloatingPerSide) == Stroke.Over;
    }
}
