namespace PatternShop.Weave;

/// <summary>The legend that stands on the chart and touches it: what a dark cell means, and what a cell with a line.</summary>
internal static class ChartLegend
{
    private const double Sample = 3.6;
    private const double TextSize = 3.1;

    /// <summary>The width that the legend needs, texts by their usual width in the font of the charts.</summary>
    public static double WidthOf(Piece piece, Wording wording) =>
        Sample + 1.4 + Lines(piece, wording).Max(line => line.Text.Length * TextSize * 0.48);

    public static void Add(List<Shape> shapes, ChartLayout layout, Wording wording)
    {
        var lines = Lines(layout.Piece, wording);
        var y = layout.Top - (lines.Count * ChartLayout.LegendLine);
        foreach (var (over, text) in lines)
        {
            if (over is { } sample)
            {
                var grid = BitGrid.Create(1, 1, (_, _) => sample);
                Glyphs.Add(shapes, grid, new CellArea(layout.Left, y, Sample), layout.Piece.Document.Glyphs);
                AddFrame(shapes, layout.Left, y);
            }
            else
            {
                shapes.Add(new Label(layout.Left + (Sample / 2), y + TextSize, TextSize, "F", TextAnchor.Middle, Bold: true, Shade.Black));
            }

            shapes.Add(new Label(layout.Left + Sample + 1.4, y + TextSize - 0.2, TextSize, text, TextAnchor.Start, Bold: false, Shade.Black));
            y += ChartLayout.LegendLine;
        }
    }

    private static List<(bool? Over, string Text)> Lines(Piece piece, Wording wording)
    {
        var lines = new List<(bool? Over, string Text)> { (true, wording.OverLegend), (false, wording.UnderLegend) };
        if (piece.FloatingPerSide > 0)
        {
            lines.Add((null, wording.FloatingLegend));
        }

        return lines;
    }

    private static void AddFrame(List<Shape> shapes, double x, double y)
    {
        shapes.Add(new Line(x, y, x + Sample, y, 0.15, Shade.Middle));
        shapes.Add(new Line(x, y + Sample, x + Sample, y + Sample, 0.15, Shade.Middle));
        shapes.Add(new Line(x, y, x, y + Sample, 0.15, Shade.Middle));
        shapes.Add(new Line(x + Sample, y, x + Sample, y + Sample, 0.15, Shade.Middle));
    }
}
