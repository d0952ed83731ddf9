namespace PatternShop.Weave;

/// <summary>The legend that stands on the chart and touches it: what a dark cell means, and what a cell with a line.</summary>
internal static class ChartLegend
{
    private const double SamplePart = 1.241;
    private const double TextPart = 1.069;
    private const double GapPart = 0.483;

    /// <summary>The width that the legend needs, texts by their usual width in the font of the charts.</summary>
    public static double WidthOf(Piece piece, double text, Wording wording) =>
        ((SamplePart + GapPart) * text) + Lines(piece, wording).Max(line => line.Text.Length * TextPart * text * 0.48);

    public static void Add(List<Shape> shapes, ChartLayout layout, Wording wording)
    {
        var lines = Lines(layout.Piece, wording);
        var (sampleSide, size) = (SamplePart * layout.TextSize, TextPart * layout.TextSize);
        var y = layout.Top - (lines.Count * layout.LegendLine);
        foreach (var (over, text) in lines)
        {
            if (over is { } sample)
            {
                var grid = BitGrid.Create(1, 1, (_, _) => sample);
                Glyphs.Add(shapes, grid, new CellArea(layout.Left, y, sampleSide), layout.Piece.Document.Glyphs, layout.Look.Ink);
                AddFrame(shapes, layout.Left, y, sampleSide);
            }
            else
            {
                shapes.Add(new Label(layout.Left + (sampleSide / 2), y + size, size, "F", TextAnchor.Middle, Bold: true, Shade.Black));
            }

            shapes.Add(new Label(layout.Left + sampleSide + (GapPart * layout.TextSize), y + (0.935 * size), size, text, TextAnchor.Start, Bold: false, Shade.Black));
            y += layout.LegendLine;
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

    private static void AddFrame(List<Shape> shapes, double x, double y, double side)
    {
        shapes.Add(new Line(x, y, x + side, y, 0.15, Shade.Middle));
        shapes.Add(new Line(x, y + side, x + side, y + side, 0.15, Shade.Middle));
        shapes.Add(new Line(x, y, x, y + side, 0.15, Shade.Middle));
        shapes.Add(new Line(x + side, y, x + side, y + side, 0.15, Shade.Middle));
    }
}
