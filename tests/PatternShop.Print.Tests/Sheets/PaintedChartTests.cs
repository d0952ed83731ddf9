using PatternShop.Tests.Shared;
using PatternShop.Weave;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Graphics;
using UglyToad.PdfPig.Graphics.Colors;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>The cells of the chart, read back from the shapes that are painted on the page.</summary>
public sealed class PaintedChartTests
{
    private const double PointsPerMillimetre = 72 / 25.4;

    public static TheoryData<string> SampleNames { get; } = new(Samples.Names);

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void The_painted_cells_are_those_of_the_definitions(string name) => Assert.Equal(Expected(Samples.All[name]), Painted(Samples.All[name]));

    [Fact]
    public void The_cells_of_a_cut_chart_are_those_of_the_definitions() => Assert.Equal(Expected(Samples.Large), Painted(Samples.Large));

    [Fact]
    public void One_other_cell_is_seen()
    {
        var document = Charts.Document("x.x.x. / .x.x.x / .xx..x / x.x.x.");
        var other = document with { Motif = document.Motif.With(2, 4, true) };
        Assert.Equal(Expected(other), Painted(other));
        Assert.NotEqual(Expected(document), Painted(other));
    }

    private static List<string> Expected(PatternDocument document)
    {
        var rows = Oracle.Rows(document);
        return [.. Piece.Of(document).PrintedRows().Select(number => string.Concat(rows[number - 1].Over.Select(over => over ? 'x' : '.')))];
    }

    private static List<string> Painted(PatternDocument document)
    {
        var piece = Piece.Of(document);
        using var file = PdfDocument.Open(Samples.Print(document));
        var plan = Printable.Plan(piece, VersionLine.NotIssued, Paper.A4, Wording.English);
        var cells = new char[piece.PrintedRows().Count(), piece.Ends];
        var parts = new Queue<ChartWindow>(Windows(plan, piece));
        foreach (var (page, number) in plan.Pages.Select((page, i) => (page, i + 1)))
        {
            if (page.Items.FirstOrDefault(item => item.Tag?.Kind == TagKind.Figure && item.Mark is AreaMark)?.Mark is AreaMark ground)
            {
                Read(file.GetPage(number).Paths, ground, new Sheet(piece, parts.Dequeue(), plan.Paper), cells);
            }
        }

        Assert.Empty(parts);
        return [.. Enumerable.Range(0, cells.GetLength(0)).Select(row => string.Concat(Enumerable.Range(0, piece.Ends).Select(end => cells[row, end])))];
    }

    // The plan of a cut chart is made for the room that its first page leaves under the heading.
    private static IEnumerable<ChartWindow> Windows(PrintPlan plan, Piece piece)
    {
        var sheets = plan.Pages.Count(page => page.Items.Any(item => item.Tag?.Kind == TagKind.Figure));
        var all = Enumerable.Range(0, 60).Select(less => ChartParts.Of(piece, ChartSheets.SmallestCell, 180, 264 - less, Wording.English)).First(parts => parts.Count == sheets || sheets == 1);
        return sheets == 1 ? [ChartWindow.Whole(piece)] : all;
    }

    private static void Read(IReadOnlyList<PdfPath> paths, AreaMark ground, Sheet sheet, char[,] cells)
    {
        var layout = sheet.LayoutOf(ground);
        for (var row = 0; row < sheet.Window.Rows; row++)
        {
            for (var column = sheet.Window.FirstColumn; column < sheet.Window.FirstColumn + sheet.Window.Columns; column++)
            {
                var x = ground.X + layout.X(column) + (0.25 * layout.Cell);
                var y = ground.Y + layout.Y(row) + (0.5 * layout.Cell);
                var tone = ToneAt(paths, x * PointsPerMillimetre, (sheet.Paper.Height - y) * PointsPerMillimetre);
                cells[sheet.Window.FirstRow + row, column] = tone < 0.5 ? 'x' : '.';
            }
        }
    }

    // What is painted last is seen. All of a chart's shapes are upright.
    private static double ToneAt(IReadOnlyList<PdfPath> paths, double x, double y)
    {
        var tone = 1.0;
        foreach (var path in paths)
        {
            if (path.Any(outline => Covers(outline.GetBoundingRectangle(), path.IsStroked ? path.LineWidth / 2 : 0, x, y)))
            {
                tone = Grey(path.IsFilled ? path.FillColor : path.StrokeColor);
            }
        }

        return tone;
    }

    // A line has flat ends and is thickened across only.
    private static bool Covers(PdfRectangle? bounds, double half, double x, double y) =>
        bounds is { } box
        && x >= box.Left - (box.Width < box.Height ? half : 0)
        && x <= box.Right + (box.Width < box.Height ? half : 0)
        && y >= box.Bottom - (box.Width > box.Height ? half : 0)
        && y <= box.Top + (box.Width > box.Height ? half : 0);

    private static double Grey(IColor? colour)
    {
        var (red, green, blue) = colour!.ToRGBValues();
        return red == green && green == blue ? red : throw new InvalidOperationException("Only greys belong on paper.");
    }

    private sealed record Sheet(Piece Piece, ChartWindow Window, Paper Paper)
    {
        // The layout whose ground is as high as the one that was painted.
        public ChartLayout LayoutOf(AreaMark ground)
        {
            var (_, top, _, bottom) = ground.Extent;
            var (low, high) = (1.0, 20.0);
            while (high - low > 1e-7)
            {
                var middle = (low + high) / 2;
                (low, high) = Layout(middle).Height < bottom - top ? (middle, high) : (low, middle);
            }

            return Layout(high);
        }

        private ChartLayout Layout(double cell) => new(Piece, Window, cell, true, Wording.English);
    }
}
