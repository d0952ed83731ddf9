namespace PatternShop.Weave;

/// <summary>One thread of a picture of the cloth, in millimetres across its own direction.</summary>
internal readonly record struct ClothThread(double Middle, double Thickness, Rgb? Colour);

/// <summary>Where the threads of a picture of the cloth lie, and which one is seen where two cross. Rows are counted from the top, ends from the left.</summary>
internal sealed class ClothPlan
{
    // of a yarn whose thickness is not known: the rest is the gap through which others are seen to pass
    private const double UsualCover = 0.8;
    private const double LeastCover = 0.05;
    private const double MostUneven = 8;
    private const double Rounding = 1e-9;

    private readonly Piece _piece;
    private readonly ClothSide _side;
    private readonly ClothThread[] _warp;
    private readonly ClothThread[] _weft;

    public ClothPlan(Piece piece, ClothRoom room, ClothSide side)
    {
        (_piece, _side) = (piece, side);
        (End, Row) = Pitches(piece, room);
        Ends = Math.Min(piece.Ends, Threads(room.Width / End, room));
        Rows = Math.Min(piece.Rows.Count, Threads(room.Height / Row, room));
        _warp = [.. Enumerable.Range(0, Ends).Select(WarpOf)];
        _weft = [.. Enumerable.Range(0, Rows).Select(WeftOf)];
    }

    /// <summary>What an end has, gap included.</summary>
    public double End { get; }

    /// <summary>What a row has, gap included.</summary>
    public double Row { get; }

    public int Ends { get; }

    public int Rows { get; }

    public double Width => Ends * End;

    public double Height => Rows * Row;

    public ClothThread Warp(int end) => _warp[end];

    public ClothThread Weft(int row) => _weft[row];

    public bool IsWeftSeen(int row, int end) => (_piece.At(Rows - row, Column(end)) == Stroke.Over) == (_side == ClothSide.Face);

    private ClothThread WarpOf(int end)
    {
        var cover = Cover(_piece.Document.Cloth.Warp.Thickness, _piece.Document.Gauge.Sett);
        return new ClothThread((end + 0.5) * End, cover * End, _piece.EndColour(Column(end)));
    }

    private ClothThread WeftOf(int row)
    {
        var number = Rows - row;
        var cover = Cover(_piece.Document.Cloth.Weft(_piece.Rows[number - 1].Weft).Thickness, _piece.Document.Gauge.Rows);
        return new ClothThread((row + 0.5) * Row, cover * Row, _piece.RowColour(number));
    }

    // turned like a page, the same part of the cloth begins at its other side
    private int Column(int end) => _side == ClothSide.Face ? end : Ends - 1 - end;

    private static int Threads(double room, ClothRoom of) => Math.Max(1, (int)(of.IsFilled ? Math.Ceiling(room - Rounding) : room + Rounding));

    private static double Cover(Thickness? thickness, Density density) =>
        thickness is null ? UsualCover : Math.Clamp((double)thickness.InMillimetres / Millimetres(density), LeastCover, 1);

    private static (double End, double Row) Pitches(Piece piece, ClothRoom room)
    {
        var end = Millimetres(piece.Document.Gauge.Sett);
        var row = Math.Clamp(Millimetres(piece.Document.Gauge.Rows), end / MostUneven, end * MostUneven);
        var (across, down) = (room.Width / (piece.Ends * end), room.Height / (piece.Rows.Count * row));
        var fits = room.IsFilled ? Math.Max(across, down) : Math.Min(across, down);
        var most = room.Thickest / Math.Max(end, row);
        var least = room.Thinnest / Math.Min(end, row);
        var scale = Math.Max(Math.Min(fits, most), least);
        return (end * scale, row * scale);
    }

    private static double Millimetres(Density density) => (double)Lengths.Of(1, density).In(LengthUnit.Centimetre).Amount * 10;
}
