namespace PatternShop.Weave;

/// <summary>Where a block of cells lies: its top left corner and the side of a cell, in millimetres.</summary>
public readonly record struct CellArea(double Left, double Top, double Cell);

/// <summary>
/// Draws over and under cells. Neighbouring over cells are joined into few rectangles and then parted again by thin
/// paper-white lines, so that they can be counted; under cells are slim vertical lines that the same white lines part. Over cells that
/// fill their place lie on lines from top to bottom, which takes fewer shapes.
/// </summary>
public static class Glyphs
{
    /// <summary>Width of the gap between neighbouring cells, as a part of a cell.</summary>
    public const double Gap = 0.09;

    /// <summary>Thickness of the line of an under cell, as a part of a cell.</summary>
    public const double UnderLine = 0.1;

    /// <summary>Height of the bar of an over cell in bars.</summary>
    public const double OverBar = 0.42;

    // Edges of over cells where ink is spared: how thick, and how far inside, as parts of a cell.
    private const double Edge = 0.08;
    private const double EdgeInside = 0.12;

    /// <summary>Adds the cells of a grid, its first row on top, true where the weft is over.</summary>
    public static void Add(ICollection<Shape> shapes, BitGrid over, CellArea area, GlyphStyle style, Ink ink = Ink.Full)
    {
        ArgumentNullException.ThrowIfNull(shapes);
        ArgumentNullException.ThrowIfNull(over);
        var blocks = CellRectangles.Cover(over);
        if (style == GlyphStyle.Cells)
        {
            AddLines(shapes, Enumerable.Range(0, over.Columns).Select(column => (column, 0, over.Rows)), area);
        }

        // bars from the top down, so that those of a row are neighbours
        foreach (var block in style == GlyphStyle.Bars ? RowByRow(blocks) : blocks)
        {
            AddOver(shapes, block, area, (style, ink));
        }

        if (ink == Ink.Sparing)
        {
            AddEdges(shapes, blocks, area, style);
        }

        if (style == GlyphStyle.Bars)
        {
            AddLines(shapes, Stretches(BitGrid.Create(over.Columns, over.Rows, (column, row) => !over[row, column])), area);
        }

        AddGaps(shapes, over, area);
    }

    private static IEnumerable<CellRectangle> RowByRow(IEnumerable<CellRectangle> blocks) =>
        blocks.SelectMany(block => Enumerable.Range(block.Row, block.Rows).Select(row => block with { Row = row, Rows = 1 })).OrderBy(block => block.Row).ThenBy(block => block.Column);

    private static void AddLines(ICollection<Shape> shapes, IEnumerable<(int Column, int Row, int Rows)> stretches, CellArea area)
    {
        foreach (var (column, row, rows) in stretches)
        {
            var x = area.Left + ((column + 0.5) * area.Cell);
            shapes.Add(new Line(x, area.Top + (row * area.Cell), x, area.Top + ((row + rows) * area.Cell), area.Cell * UnderLine, Shade.Black));
        }
    }

    private static void AddOver(ICollection<Shape> shapes, CellRectangle block, CellArea area, (GlyphStyle Style, Ink Ink) look)
    {
        var shade = look.Ink == Ink.Full ? Shade.Dark : Shade.Light;
        var (x, width) = (area.Left + (block.Column * area.Cell), block.Columns * area.Cell);
        if (look.Style == GlyphStyle.Cells)
        {
            shapes.Add(new Box(x, area.Top + (block.Row * area.Cell), width, block.Rows * area.Cell, shade));
            return;
        }

        for (var row = block.Row; row < block.Row + block.Rows; row++)
        {
            shapes.Add(new Box(x, area.Top + ((row + 0.5 - (OverBar / 2)) * area.Cell), width, OverBar * area.Cell, shade));
        }
    }

    // From the top down, the upper edges of a row before its lower ones, so that those on one line are neighbours.
    private static void AddEdges(ICollection<Shape> shapes, IEnumerable<CellRectangle> blocks, CellArea area, GlyphStyle style)
    {
        var from = style == GlyphStyle.Cells ? EdgeInside : 0.5 - (OverBar / 2);
        foreach (var row in RowByRow(blocks).GroupBy(block => block.Row))
        {
            foreach (var at in (ReadOnlySpan<double>)[from, 1 - from])
            {
                var top = area.Top + ((row.Key + at - (Edge / 2)) * area.Cell);
                foreach (var block in row)
                {
                    shapes.Add(new Box(area.Left + (block.Column * area.Cell), top, block.Columns * area.Cell, area.Cell * Edge, Shade.Black));
                }
            }
        }
    }

    private static void AddGaps(ICollection<Shape> shapes, BitGrid over, CellArea area)
    {
        var (right, bottom) = (area.Left + (over.Columns * area.Cell), area.Top + (over.Rows * area.Cell));
        for (var column = 0; column <= over.Columns; column++)
        {
            var x = area.Left + (column * area.Cell);
            shapes.Add(new Line(x, area.Top, x, bottom, area.Cell * Gap, Shade.White));
        }

        for (var row = 0; row <= over.Rows; row++)
        {
            var y = area.Top + (row * area.Cell);
            shapes.Add(new Line(area.Left, y, right, y, area.Cell * Gap, Shade.White));
        }
    }

    // Stretches of true cells along the rows of a transposed grid: column, first row, rows.
    private static IEnumerable<(int Column, int Row, int Rows)> Stretches(BitGrid byColumn)
    {
        for (var column = 0; column < byColumn.Rows; column++)
        {
            var start = -1;
            for (var row = 0; row <= byColumn.Columns; row++)
            {
                var set = row < byColumn.Columns && byColumn[column, row];
                if (set && start < 0)
                {
                    start = row;
                }
                else if (!set && start >= 0)
                {
                    yield return (column, start, row - start);
                    start = -1;
                }
            }
        }
    }
}
