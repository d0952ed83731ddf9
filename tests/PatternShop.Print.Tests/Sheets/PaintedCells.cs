using PatternShop.Weave;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Graphics;
using UglyToad.PdfPig.Graphics.Colors;

namespace PatternShop.Print.Tests;

/// <summary>A chart on a page: where it lies, by the plan, and what is painted there, by another library.</summary>
/// <param name="Layout">The chart.</param>
/// <param name="Left">Its left edge in millimetres.</param>
/// <param name="Top">Its top edge in millimetres.</param>
/// <param name="Paths">Everything that is painted on the page.</param>
/// <param name="PaperHeight">In millimetres.</param>
internal sealed record PaintedChart(ChartLayout Layout, double Left, double Top, IReadOnlyList<PdfPath> Paths, double PaperHeight)
{
    public const double PointsPerMillimetre = 72 / 25.4;

    private readonly PaintedSpots _spots = new(Paths);

    /// <summary>The charts of a file in order.</summary>
    public static IReadOnlyList<PaintedChart> Of(byte[] file, PrintPlan plan)
    {
        using var pdf = PdfDocument.Open(file);
        return
        [
            .. from page in plan.Pages.Select((page, i) => (page.Items, Number: i + 1))
               from item in page.Items
               where item.Tag?.Chart is not null
               group item by (page.Number, item.Tag) into figure
               let ground = figure.First().Mark
               select new PaintedChart(figure.Key.Tag.Chart!, ground.X, ground.Y, [.. pdf.GetPage(figure.Key.Number).Paths], plan.Paper.Height),
        ];
    }

    /// <summary>
    /// A cell by its printed row and its end: 'x' where it is darker than paper near its left edge, '.' where there is paper and a dark line in the middle,
    /// '?' where there is neither.
    /// </summary>
    public char Cell(int row, int column) => (ToneAt(row, column, 0.25), ToneAt(row, column, 0.5)) switch
    {
        ( < 0.9, _) => 'x',
        (1, < 0.5) => '.',
        _ => '?',
    };

    private double ToneAt(int row, int column, double across)
    {
        var x = Left + Layout.X(column) + (across * Layout.Cell);
        var y = Top + Layout.Y(row - Layout.Window.FirstRow) + (0.5 * Layout.Cell);
        return _spots.ToneAt(x * PointsPerMillimetre, (PaperHeight - y) * PointsPerMillimetre);
    }
}

/// <summary>What is seen at any spot of a page, by the shapes that are painted on it.</summary>
internal sealed class PaintedSpots
{
    // Shapes are looked up by squares of this many points.
    private const double Square = 24;

    private readonly Dictionary<(int X, int Y), List<(PdfRectangle Box, double Tone)>> _squares = [];

    /// <param name="paths">The shapes of a page in the order in which they are painted; all of a chart's are upright.</param>
    public PaintedSpots(IReadOnlyList<PdfPath> paths)
    {
        foreach (var path in paths)
        {
            var tone = Grey(path.IsFilled ? path.FillColor : path.StrokeColor);
            foreach (var outline in path)
            {
                if (outline.GetBoundingRectangle() is { } bounds)
                {
                    Add(path.IsStroked ? Thickened(bounds, path.LineWidth / 2) : bounds, tone);
                }
            }
        }
    }

    /// <summary>How light a spot is, in points from the bottom left corner: what is painted last is seen; 1 where nothing is.</summary>
    public double ToneAt(double x, double y)
    {
        var near = _squares.GetValueOrDefault(((int)Math.Floor(x / Square), (int)Math.Floor(y / Square))) ?? [];
        var at = near.FindLastIndex(shape => x >= shape.Box.Left && x <= shape.Box.Right && y >= shape.Box.Bottom && y <= shape.Box.Top);
        return at < 0 ? 1 : near[at].Tone;
    }

    private void Add(PdfRectangle box, double tone)
    {
        for (var column = (int)Math.Floor(box.Left / Square); column <= (int)Math.Floor(box.Right / Square); column++)
        {
            for (var row = (int)Math.Floor(box.Bottom / Square); row <= (int)Math.Floor(box.Top / Square); row++)
            {
                if (!_squares.TryGetValue((column, row), out var near))
                {
                    _squares.Add((column, row), near = []);
                }

                near.Add((box, tone));
            }
        }
    }

    // A line has flat ends and is thickened across only.
    private static PdfRectangle Thickened(PdfRectangle line, double half)
    {
        var (across, along) = line.Width < line.Height ? (half, 0.0) : line.Width > line.Height ? (0.0, half) : (0.0, 0.0);
        return new PdfRectangle(line.Left - across, line.Bottom - along, line.Right + across, line.Top + along);
    }

    // Yarns have colours, cells do not: a coloured spot is no tone, and neither over nor under where a chart is read.
    private static double Grey(IColor? colour)
    {
        var (red, green, blue) = colour!.ToRGBValues();
        return red == green && green == blue ? red : double.NaN;
    }
}
