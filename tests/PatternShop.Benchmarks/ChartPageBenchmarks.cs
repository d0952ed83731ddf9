using BenchmarkDotNet.Attributes;
using PatternShop.Print;
using PatternShop.Weave;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PaperSize = PatternShop.Print.Paper;

namespace PatternShop.Benchmarks;

/// <summary>
/// The chart of 100 × 100 cells as a PDF page, against one rectangle for each over cell on the same page, drawn with the PDF library and packed by it.
/// Ours paints the under cells and the gaps besides; the whole page has numbers, arrows, legend, fonts and tags as well.
/// </summary>
public class ChartPageBenchmarks
{
    private const double Cell = 4;
    private const double Gap = Glyphs.Gap * Cell;
    private const double PointsPerMillimetre = 72 / 25.4;
    private static readonly PaperSize Sheet = new("sheet", 480, 480);
    private static readonly FileFacts Facts = new("Benchmark", "en", "", "", "");
    private Piece _piece = PieceOf(BenchmarkCharts.Scattered(4, 4));

    [Params("100 × 100 twill", "100 × 100 without order")]
    public string Size { get; set; } = "";

    [GlobalSetup]
    public void Make() => _piece = PieceOf(Size.EndsWith("twill", StringComparison.Ordinal)
        ? BitGrid.Create(100, 100, (row, end) => (end + 400 - row) % 4 < 2)
        : BenchmarkCharts.Scattered(100, 100));

    [Benchmark(Baseline = true, Description = "one rectangle a cell")]
    public int RectangleACell()
    {
        using var document = new PdfDocument();
        document.Options.CompressContentStreams = true;
        var page = document.AddPage();
        (page.Width, page.Height) = (XUnit.FromMillimeter(Sheet.Width), XUnit.FromMillimeter(Sheet.Height));
        using (var graphics = XGraphics.FromPdfPage(page))
        {
            var brush = new XSolidBrush(XColor.FromGrayScale(ShapeMarks.Grey(Shade.Dark)));
            for (var row = 0; row < 100; row++)
            {
                for (var end = 0; end < 100; end++)
                {
                    if (_piece.At(row + 1, end) == Stroke.Over)
                    {
                        graphics.DrawRectangle(brush, Points(30 + (end * Cell) + (Gap / 2)), Points(30 + ((99 - row) * Cell) + (Gap / 2)), Points(Cell - Gap), Points(Cell - Gap));
                    }
                }
            }
        }

        using var file = new MemoryStream();
        document.Save(file, false);
        return Made.Note(this, Size, (int)file.Length);
    }

    [Benchmark(Description = "joined cells (ours)")]
    public int Joined()
    {
        var shapes = new List<Shape>();
        Glyphs.Add(shapes, BitGrid.Create(100, 100, (row, end) => _piece.At(100 - row, end) == Stroke.Over), new CellArea(30, 30, Cell), GlyphStyle.Cells);
        return Made.Note(this, Size, Page(ShapeMarks.Of(new Drawing(Sheet.Width, Sheet.Height, shapes.ToSequence())), null).Length);
    }

    [Benchmark(Description = "the whole chart page with numbers, legend and tags (ours)")]
    public int WholePage()
    {
        var layout = new ChartLayout(_piece, ChartWindow.Whole(_piece), Cell, true, Wording.English);
        var figure = new Tag(TagKind.Figure) { Alternative = Wording.English.ChartDescription(_piece), Chart = layout };
        return Made.Note(this, Size, Page(ShapeMarks.Of(ChartDrawing.Of(layout, Wording.English)).Select(mark => mark.Moved(10, 10)), figure).Length);
    }

    private static byte[] Page(IEnumerable<Mark> marks, Tag? tag) =>
        Painter.Paint(new PrintPlan(Sheet, Facts, [new PagePlan(() => marks.Select(mark => new Placed(mark, tag)).ToSequence())]));

    private static double Points(double millimetres) => millimetres * PointsPerMillimetre;

    private static Piece PieceOf(BitGrid motif) => Piece.Of(BenchmarkCharts.Document(motif));
}
