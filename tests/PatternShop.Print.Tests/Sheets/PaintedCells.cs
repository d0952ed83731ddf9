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

    /// <summary>Whether a cell is dark, by its printed row and its end.</summary>
    public bool IsOver(int row, int column)
    {
        var x = Left + Layout.X(column) + (0.25 * Layout.Cell);
        var y = Top + Layout.Y(row - Layout.Window.FirstRow) + (0.5 * Layout.Cell);
        return ToneAt(Paths, x * PointsPerMillimetre, (PaperHeight - y) * PointsPerMillimetre) < 0.5;
    }

    // What is painted last is seen. All of a chart's shapes are upright.
    private static double ToneAt(IReadOnlyList<PdfPath> paths, double x, double y)
    {
        for (var i = paths.Count - 1; i >= 0; i--)
        {
            var path = paths[i];
            if (path.Any(outline => Covers(outline.GetBoundingRectangle(), path.IsStroked ? path.LineWidth / 2 : 0, x, y)))
            {
                return Grey(path.IsFilled ? path.FillColor : path.StrokeColor);
            }
        }

        return 1;
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
}
