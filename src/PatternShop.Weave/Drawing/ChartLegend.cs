namespace PatternShop.Weave;

/// <summary>The legend that stands on the chart and touches it: what a dark cell means, and what a cell with a line.</summary>
internal static class ChartLegend
{
    private const double SamplePart = 1.241;
    private const double TextPart = 1.069;
    private const double GapPart = 0.483;
    private const double BetweenPart = 2;

    /// <summary>The lines in which the parts of the legend stand: under each other, or beside each other as far as the look gives them room.</summary>
    public static Sequence<Sequence<LegendItem>> Lines(ChartLayout layout, Wording wording)
    {
        var room = layout.Look.LegendPerEnd * layout.Window.Columns;
        var lines = new List<Sequence<LegendItem>>();
        foreach (var part in Parts(layout, wording))
        {
            if (lines.Count > 0 && WidthOf([.. lines[^1], part], layout.TextSize) <= room)
            {
                lines[^1] = [.. lines[^1], part];
            }
            else
            {
                lines.Add([part]);
            }
        }

        return lines.ToSequence();
    }

    /// <summary>The width that a line of the legend needs, texts by their usual width in the font of the charts.</summary>
    public static double WidthOf(Sequence<LegendItem> line, double text) =>
        line.Sum(part => WidthOf(part, text)) + ((line.Count - 1) * BetweenPart * text);

    public static void Add(List<Shape> shapes, ChartLayout layout, Wording wording)
    {
        var lines = Lines(layout, wording);
        var y = layout.Top - (lines.Count * layout.LegendLine);
        foreach (var line in lines)
        {
            var x = layout.Left;
            foreach (var part in line)
            {
                AddPart(shapes, layout, part, (x, y));
                x += WidthOf(part, layout.TextSize) + (BetweenPart * layout.TextSize);
            }

            y += layout.LegendLine;
        }
    }

    private static void AddPart(List<Shape> shapes, ChartLayout layout, LegendItem part, (double X, double Y) at)
    {
        var (sampleSide, size) = (SamplePart * layout.TextSize, TextPart * layout.TextSize);
        if (part.Over is { } sample)
        {
            var grid = BitGrid.Create(1, 1, (_, _) => sample);
            Glyphs.Add(shapes, grid, new CellArea(at.X, at.Y, sampleSide), layout.Piece.Document.Glyphs, layout.Look.Ink);
            AddFrame(shapes, at.X, at.Y, sampleSide);
        }
        else
        {
            shapes.Add(new Label(at.X + (sampleSide / 2), at.Y + size, size, "F", TextAnchor.Middle, Bold: true, Shade.Black));
        }

        shapes.Add(new Label(at.X + sampleSide + (GapPart * layout.TextSize), at.Y + (0.935 * size), size, part.Text, TextAnchor.Start, Bold: false, Shade.Black));
    }

    private static double WidthOf(LegendItem part, double text) => ((SamplePart + GapPart) * text) + (part.Text.Length * TextPart * text * 0.48);

    private static Sequence<LegendItem> Parts(ChartLayout layout, Wording wording) =>
    [
        new LegendItem(true, layout.Look.ShortLegend ? wording.ShortOverLegend : wording.OverLegend),
        new LegendItem(false, layout.Look.ShortLegend ? wording.ShortUnderLegend : wording.UnderLegend),
        .. layout.Piece.FloatingPerSide > 0 ? new[] { new LegendItem(null, layout.Look.ShortLegend ? wording.ShortFloatingLegend : wording.FloatingLegend) } : [],
    ];

    private static void AddFrame(List<Shape> shapes, double x, double y, double side)
    {
        shapes.Add(new Line(x, y, x + side, y, 0.15, Shade.Middle));
        shapes.Add(new Line(x, y + side, x + side, y + side, 0.15, Shade.Middle));
        shapes.Add(new Line(x, y, x, y + side, 0.15, Shade.Middle));
        shapes.Add(new Line(x + side, y, x + side, y + side, 0.15, Shade.Middle));
    }
}

/// <summary>A part of the legend: a sample of a cell, or the letter of the floating ends where there is none, and what it means.</summary>
internal sealed record LegendItem(bool? Over, string Text);
