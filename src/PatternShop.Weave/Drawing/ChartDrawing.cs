using System.Globalization;

namespace PatternShop.Weave;

/// <summary>Draws the chart of a piece as plain shapes; screens and paper are both made from them.</summary>
public static class ChartDrawing
{
    private const double Hair = 0.12;
    private const double Heavy = 0.7;

    /// <summary>The whole chart with its legend.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="cell">Side of a cell in millimetres.</param>
    /// <param name="wording">The words of the legend and the brackets.</param>
    public static Drawing Of(Piece piece, double cell, Wording wording) =>
        Of(new ChartLayout(piece, ChartWindow.Whole(piece), cell, legend: true, wording), wording);

    /// <summary>The part of a chart that a layout describes.</summary>
    public static Drawing Of(ChartLayout layout, Wording wording)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(wording);
        var shapes = new List<Shape> { new Box(0, 0, layout.Width, layout.Height, Shade.White) };
        foreach (var stretch in layout.Stretches)
        {
            foreach (var columns in layout.ColumnStretches())
            {
                AddCells(shapes, layout, stretch, columns);
            }

            AddMotifLines(shapes, layout, stretch);
            AddFloatingLines(shapes, layout, stretch);
            AddBracket(shapes, layout, stretch, wording);
        }

        AddRowNumbers(shapes, layout);
        AddEndNumbers(shapes, layout);
        AddBalance(shapes, layout, wording);
        if (layout.LegendHeight > 0)
        {
            ChartLegend.Add(shapes, layout, wording);
        }

        return new Drawing(layout.Width, layout.Height, shapes.ToSequence());
    }

    private static void AddCells(List<Shape> shapes, ChartLayout layout, ChartStretch stretch, (int First, int Count) columns)
    {
        var over = BitGrid.Create(stretch.Rows, columns.Count, (row, column) =>
            layout.Piece.At(layout.Number(stretch.First + stretch.Rows - 1 - row), columns.First + column) == Stroke.Over);
        var area = new CellArea(layout.X(columns.First), layout.Y(stretch.First + stretch.Rows - 1), layout.Cell);
        Glyphs.Add(shapes, over, area, layout.Piece.Document.Glyphs, layout.Look.Ink);
        var (right, bottom) = (area.Left + (columns.Count * area.Cell), area.Top + (stretch.Rows * area.Cell));
        shapes.Add(new Line(area.Left, area.Top, right, area.Top, Hair, Shade.Black));
        shapes.Add(new Line(area.Left, bottom, right, bottom, Hair, Shade.Black));
        shapes.Add(new Line(area.Left, area.Top, area.Left, bottom, Hair, Shade.Black));
        shapes.Add(new Line(right, area.Top, right, bottom, Hair, Shade.Black));
    }

    private static void AddMotifLines(List<Shape> shapes, ChartLayout layout, ChartStretch stretch)
    {
        var (top, bottom) = Ends(layout, stretch);
        var piece = layout.Piece;
        for (var end = piece.Document.Motif.Columns; end < piece.PatternEnds; end += piece.Document.Motif.Columns)
        {
            var column = end + piece.FloatingPerSide;
            if (column > layout.Window.FirstColumn && column < layout.Window.FirstColumn + layout.Window.Columns)
            {
                shapes.Add(new Line(layout.X(column), top - 0.6, layout.X(column), bottom + 0.6, 0.35, Shade.Black));
            }
        }
    }

    private static void AddFloatingLines(List<Shape> shapes, ChartLayout layout, ChartStretch stretch)
    {
        var (top, bottom) = Ends(layout, stretch);
        foreach (var (first, count) in layout.ColumnStretches().Skip(1))
        {
            _ = count;
            var between = (layout.X(first - 1) + layout.Cell + layout.X(first)) / 2;
            shapes.Add(new Line(between, top, between, bottom, Heavy, Shade.Black));
        }
    }

    private static void AddBracket(List<Shape> shapes, ChartLayout layout, ChartStretch stretch, Wording wording)
    {
        if (!layout.ShowsBrackets || !ChartLayout.HasBracket(stretch))
        {
            return;
        }

        var (top, bottom) = Ends(layout, stretch);
        var x = layout.Right + layout.Side + 1;
        shapes.Add(new Line(x, top + 0.4, x, bottom - 0.4, 0.4, Shade.Middle));
        shapes.Add(new Line(x - 1.4, top + 0.4, x + 0.2, top + 0.4, 0.4, Shade.Middle));
        shapes.Add(new Line(x - 1.4, bottom - 0.4, x + 0.2, bottom - 0.4, 0.4, Shade.Middle));
        var middle = (top + bottom) / 2;
        var lines = layout.Look.BareBrackets ? [] : layout.BracketLines(stretch, wording);
        var y = middle + (0.345 * layout.TextSize) - ((lines.Count - 1) * layout.BracketLine / 2);
        shapes.AddRange(lines.Select((line, i) =>
            new Label(x + 1.6, y + (i * layout.BracketLine), layout.TextSize, line, TextAnchor.Start, Bold: true, Shade.Black)));
    }

    private static void AddRowNumbers(List<Shape> shapes, ChartLayout layout)
    {
        for (var index = 0; index < layout.Window.Rows; index++)
        {
            var number = layout.Number(index);
            var from = layout.Piece.Rows[number - 1].From;
            var middle = layout.Y(index) + (layout.Cell / 2);
            AddArrow(shapes, layout, from, middle);
            foreach (var side in new[] { Side.Left, Side.Right })
            {
                var starts = side == from;
                var away = (starts ? layout.ArrowLength + 0.7 : 0) + 1;
                shapes.Add(new Label(
                    side == Side.Left ? layout.Left - away : layout.Right + away,
                    middle + (layout.NumberSize * 0.35),
                    layout.NumberSize,
                    number.ToString(CultureInfo.InvariantCulture),
                    side == Side.Left ? TextAnchor.End : TextAnchor.Start,
                    starts,
                    starts ? Shade.Black : Shade.Middle));
            }
        }
    }

    private static void AddArrow(List<Shape> shapes, ChartLayout layout, Side from, double middle)
    {
        var (tail, tip) = from == Side.Left
            ? (layout.Left - 0.8 - layout.ArrowLength, layout.Left - 0.8)
            : (layout.Right + 0.8 + layout.ArrowLength, layout.Right + 0.8);
        var half = layout.ArrowLength * 0.3;
        var neck = tip + ((tail - tip) * 0.5);
        shapes.Add(new Line(tail, middle, neck, middle, 0.4, Shade.Black));
        shapes.Add(new Triangle(tip, middle, neck, middle - half, neck, middle + half, Shade.Black));
    }

    private static void AddEndNumbers(List<Shape> shapes, ChartLayout layout)
    {
        var digits = layout.Piece.PatternEnds.ToString(CultureInfo.InvariantCulture).Length;
        var size = Math.Min(layout.NumberSize, layout.Cell * 0.9 / (0.62 * digits));
        var every = size < layout.Look.LeastEndNumber * 0.842 ? 5 : 1;
        size = Math.Max(size, layout.Look.LeastEndNumber);
        for (var column = layout.Window.FirstColumn; column < layout.Window.FirstColumn + layout.Window.Columns; column++)
        {
            var end = column - layout.Piece.FloatingPerSide + 1;
            var floating = layout.Piece.IsFloating(column);
            if (!floating && every > 1 && end != 1 && end % every != 0)
            {
                continue;
            }

            var middle = layout.X(column) + (layout.Cell / 2);
            shapes.Add(new Label(middle, layout.Bottom + size + 0.6, size, layout.Piece.EndName(column), TextAnchor.Middle, floating, Shade.Black));
        }
    }

    private static void AddBalance(List<Shape> shapes, ChartLayout layout, Wording wording)
    {
        var (first, count) = layout.BalanceColumns;
        if (count == 0)
        {
            return;
        }

        var y = layout.Bottom + layout.NumberSize + 2.5;
        var (left, right) = (layout.X(first) + 0.3, layout.X(first + count - 1) + layout.Cell - 0.3);
        shapes.Add(new Line(left, y, right, y, 0.4, Shade.Middle));
        shapes.Add(new Line(left + 0.2, y - 1, left + 0.2, y, 0.4, Shade.Middle));
        shapes.Add(new Line(right - 0.2, y - 1, right - 0.2, y, 0.4, Shade.Middle));
        shapes.Add(new Label(layout.BalanceLabelRight, y + (layout.HasBalanceBeside ? 1.4 : 1.24 * layout.TextSize), layout.TextSize, wording.BalanceLabel(count), TextAnchor.End, Bold: false, Shade.Black));
    }

    private static (double Top, double Bottom) Ends(ChartLayout layout, ChartStretch stretch) =>
        (layout.Y(stretch.First + stretch.Rows - 1), layout.Y(stretch.First) + layout.Cell);
}
