namespace PatternShop.Weave;

/// <summary>
/// The face of the woven cloth as a flat crossing drawing: a dark weft over a light warp, ends and rows as far apart as sett and
/// row density put them.
/// </summary>
public static class ClothDrawing
{
    /// <summary>Thinner threads could not be told apart on paper; of a larger piece the lower left corner is drawn.</summary>
    public const double ThinnestPitch = 0.5;

    // Threads cover so much of their pitch; the rest is the gap through which others are seen to pass.
    private const double Cover = 0.8;
    private const double MostPitch = 2.2;
    private const double MostUneven = 8;

    /// <summary>The drawing of as much of a piece as fits.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="width">Room in millimetres.</param>
    /// <param name="height">Room in millimetres.</param>
    public static Drawing Of(Piece piece, double width, double height)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var (end, row) = Pitches(piece, width, height);
        var ends = Math.Min(piece.Ends, Math.Max(1, (int)((width / end) + 1e-9)));
        var rows = Math.Min(piece.Rows.Count, Math.Max(1, (int)((height / row) + 1e-9)));
        var shapes = new List<Shape> { new Box(0, 0, ends * end, rows * row, Shade.White) };
        for (var y = 0; y < rows; y++)
        {
            shapes.Add(new Box(0, (y + ((1 - Cover) / 2)) * row, ends * end, Cover * row, Shade.Middle));
        }

        var warp = WarpStretches(piece, rows, ends).ToList();
        shapes.AddRange(warp.Select(w => new Box(w.End * end, w.Top * row, end, w.Rows * row, Shade.White)));
        shapes.AddRange(warp.Select(w => Strip(w, end, row, rows)));
        return new Drawing(ends * end, rows * row, shapes.ToSequence());
    }

    /// <summary>Whether the drawing shows the whole piece.</summary>
    public static bool ShowsAll(Piece piece, double width, double height)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var (end, row) = Pitches(piece, width, height);
        return (piece.Ends * end) <= width + 1e-9 && (piece.Rows.Count * row) <= height + 1e-9;
    }

    // A warp thread goes on to the middle of the gaps at its ends, so that it is seen to pass under the weft there.
    private static Box Strip((int End, int Top, int Rows) w, double end, double row, int rows)
    {
        var reach = (1 - Cover) / 2 * row;
        var (top, bottom) = (Math.Max(0, (w.Top * row) - reach), Math.Min(rows * row, ((w.Top + w.Rows) * row) + reach));
        return new Box((w.End + ((1 - Cover) / 2)) * end, top, Cover * end, bottom - top, Shade.Light);
    }

    // Stretches of neighbouring rows, counted from the top of the drawing, in which an end lies on the face.
    private static IEnumerable<(int End, int Top, int Rows)> WarpStretches(Piece piece, int rows, int ends)
    {
        for (var end = 0; end < ends; end++)
        {
            var start = -1;
            for (var y = 0; y <= rows; y++)
            {
                var face = y < rows && piece.At(rows - y, end) == Stroke.Under;
                if (face && start < 0)
                {
                    start = y;
                }
                else if (!face && start >= 0)
                {
                    yield return (end, start, y - start);
                    start = -1;
                }
            }
        }
    }

    private static (double End, double Row) Pitches(Piece piece, double width, double height)
    {
        var end = Millimetres(piece.Document.Gauge.Sett);
        var row = Math.Clamp(Millimetres(piece.Document.Gauge.Rows), end / MostUneven, end * MostUneven);
        var fits = Math.Min(width / (piece.Ends * end), height / (piece.Rows.Count * row));
        var most = MostPitch / Math.Max(end, row);
        var least = ThinnestPitch / Math.Min(end, row);
        var scale = Math.Max(Math.Min(fits, most), least);
        return (end * scale, row * scale);
    }

    private static double Millimetres(Density density)
    {
        var length = Lengths.Of(1, density).In(LengthUnit.Centimetre);
        return (double)length.Amount * 10;
    }
}
