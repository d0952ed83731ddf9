using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A small chart of a weave that goes on in both directions.</summary>
internal static class WeavePicture
{
    public const int Ends = 24;
    public const int Rows = 16;

    /// <summary>Rows and ends that are shown of a large one.</summary>
    public const int Most = 64;
    private const double Cell = 2;

    /// <summary>The chart, row 1 at the bottom.</summary>
    /// <param name="weave">The weave.</param>
    /// <param name="style">How cells are drawn.</param>
    /// <param name="title">What it is, for who cannot see it.</param>
    public static string Svg(BitGrid weave, GlyphStyle style, string title)
    {
        var (rows, ends) = (Math.Clamp(weave.Rows, Rows, Most), Math.Clamp(weave.Columns, Ends, Most));
        var cells = Transforms.MirrorAlong(Transforms.RepeatTo(weave, rows, ends));
        var shapes = new List<Shape> { new Box(0, 0, ends * Cell, rows * Cell, Shade.White) };
        Glyphs.Add(shapes, cells, new CellArea(0, 0, Cell), style);
        return SvgText.Of(new Drawing(ends * Cell, rows * Cell, shapes.ToSequence()), title, "", "begin-weave");
    }
}
