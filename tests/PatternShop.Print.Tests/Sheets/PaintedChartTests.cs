using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>The cells of the chart, read back from the shapes that are painted on the page.</summary>
public sealed class PaintedChartTests
{
    private const double Exactness = 0.1;

    public static TheoryData<string> SampleNames { get; } = new(Samples.Names);

    public static TheoryData<string> SettingNames { get; } = new(PrintSetting.All.Select(setting => setting.Name));

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void The_painted_cells_are_those_of_the_definitions(string name) => Assert.Equal(Expected(Samples.All[name]), Painted(Samples.All[name]));

    [Fact]
    public void The_cells_of_a_cut_chart_are_those_of_the_definitions() => Assert.Equal(Expected(Samples.Large), Painted(Samples.Large));

    /// <summary>Every setting in both ways to draw cells, on both papers.</summary>
    [Fact]
    public void The_cells_of_every_edition_are_those_of_the_definitions() => Assert.All(
        from setting in PrintSetting.All
        from glyphs in new[] { GlyphStyle.Cells, GlyphStyle.Bars }
        select (setting, glyphs),
        edition => Assert.Equal(Expected(Samples.Diamond), Painted(Samples.Diamond with { Glyphs = edition.glyphs }, edition.setting)));

    [Fact]
    public void The_cells_of_generated_pieces_are_those_of_the_definitions() => Gen.Select(DocumentGen.Documents, Gen.Int[0, PrintSetting.All.Count - 1].Select(i => PrintSetting.All[i])).Sample(
        (document, setting) => Assert.Equal(Expected(document), Painted(document, setting)),
        iter: Effort.Of(40, 1_000));

    [Fact]
    public void The_cells_of_a_very_large_chart_are_those_of_the_definitions()
    {
        var (ends, rows) = Effort.IsFull ? (400, 600) : (120, 60);
        var document = Samples.Large with
        {
            Motif = BitGrid.Create(rows, ends, (row, end) => ((row * 7) + (end * 3) + (row * end / 5)) % 7 < 3),
            Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, rows, 1)]),
        };
        Assert.Equal(Expected(document), Painted(document));
    }

    [Fact]
    public void One_other_cell_is_seen()
    {
        var document = Charts.Document("x.x.x. / .x.x.x / .xx..x / x.x.x.");
        var other = document with { Motif = document.Motif.With(2, 4, true) };
        Assert.Equal(Expected(other), Painted(other));
        Assert.NotEqual(Expected(document), Painted(other));
    }

    /// <summary>White lines part the cells: one stands at each edge of each cell, on every sheet of every edition.</summary>
    [Theory]
    [MemberData(nameof(SettingNames))]
    public void Cells_are_as_large_as_they_say_and_where_they_say_to_a_tenth_of_a_millimetre(string name)
    {
        foreach (var chart in ChartsOf(Samples.Large, SettingOf(name)).Concat(ChartsOf(Samples.Diamond, SettingOf(name))))
        {
            Assert.Empty(MisplacedEdges(chart, 0));
            Assert.NotEmpty(MisplacedEdges(chart, 0.15));
        }
    }

    // Edges of columns and rows, moved by so much, at which no white line stands.
    private static List<double> MisplacedEdges(PaintedChart chart, double off)
    {
        var gaps = chart.Paths.Where(path => path.IsStroked && path.StrokeColor!.ToRGBValues() is { r: 1, g: 1, b: 1 }).SelectMany(path => path).Select(line => line.GetBoundingRectangle()!.Value).ToList();
        var across = gaps.Where(box => box.Width < box.Height).Select(box => (box.Left / PaintedChart.PointsPerMillimetre) - chart.Left).ToList();
        var down = gaps.Where(box => box.Width > box.Height).Select(box => chart.PaperHeight - (box.Bottom / PaintedChart.PointsPerMillimetre) - chart.Top).ToList();
        var (layout, window) = (chart.Layout, chart.Layout.Window);
        return
        [
            .. Enumerable.Range(window.FirstColumn, window.Columns).SelectMany(column => new[] { layout.X(column), layout.X(column) + layout.Cell }).Where(x => !across.Exists(line => Math.Abs(line - x - off) <= Exactness)),
            .. Enumerable.Range(0, window.Rows).SelectMany(row => new[] { layout.Y(row), layout.Y(row) + layout.Cell }).Where(y => !down.Exists(line => Math.Abs(line - y - off) <= Exactness)),
        ];
    }

    /// <summary>Where the marks of neighbouring sheets meet, every cell that both show lies on itself, and all together are the chart on one sheet.</summary>
    [Fact]
    public void Sheets_put_together_by_their_marks_are_the_single_chart()
    {
        var charts = ChartsOf(Samples.Large, PrintSetting.Standard);
        Assert.True(charts.Count >= 4);
        var places = Together(charts, MarksOf);
        var single = new ChartLayout(charts[0].Layout.Piece, ChartWindow.Whole(charts[0].Layout.Piece), charts[0].Layout.Cell, true, Wording.English, charts[0].Layout.Look);
        var (dx, dy) = (single.Left - charts[0].Layout.Left, single.Bottom - charts[0].Layout.Bottom);
        var seen = new HashSet<(int, int)>();
        foreach (var (chart, place) in charts.Zip(places))
        {
            foreach (var (row, column) in Cells(chart.Layout.Window))
            {
                Assert.Equal(single.X(column), chart.Layout.X(column) + place.X + dx, Exactness);
                Assert.Equal(single.Y(row), chart.Layout.Y(row - chart.Layout.Window.FirstRow) + place.Y + dy, Exactness);
                seen.Add((row, column));
            }
        }

        Assert.Equal(single.Window.Rows * single.Window.Columns, seen.Count);
    }

    [Fact]
    public void Marks_that_are_a_little_off_would_be_seen()
    {
        var charts = ChartsOf(Samples.Large, PrintSetting.Standard);
        var right = Together(charts, MarksOf);
        var wrong = Together(charts, chart => chart == charts[1] ? new Marks([.. MarksOf(chart).X.Select(x => x + 0.2)], MarksOf(chart).Y) : MarksOf(chart));
        Assert.True(Math.Abs(right[1].X - wrong[1].X) > Exactness);
    }

    private sealed record Marks(IReadOnlyList<double> X, IReadOnlyList<double> Y);

    // Each sheet is laid on the one at its left, the first of a row of sheets on the one below it.
    private static List<(double X, double Y)> Together(IReadOnlyList<PaintedChart> charts, Func<PaintedChart, Marks> marksOf)
    {
        var across = charts.TakeWhile(chart => chart.Layout.Window.FirstRow == 0).Count();
        var places = new List<(double X, double Y)>();
        for (var i = 0; i < charts.Count; i++)
        {
            var own = marksOf(charts[i]);
            if (i % across > 0)
            {
                var left = marksOf(charts[i - 1]);
                places.Add((places[i - 1].X + left.X[^1] - own.X[0], places[i - 1].Y + Level(charts[i - 1], left) - Level(charts[i], own)));
            }
            else if (i >= across)
            {
                var below = marksOf(charts[i - across]);
                places.Add((places[i - across].X + charts[i - across].Layout.Left - charts[i].Layout.Left, places[i - across].Y + below.Y[0] - own.Y[^1]));
            }
            else
            {
                places.Add((0, 0));
            }
        }

        return places;
    }

    // Neighbours at the left and right have their marks above or below at the same row; their grids' lower edge where there is none.
    private static double Level(PaintedChart chart, Marks marks) => marks.Y.Count > 0 ? marks.Y[0] : chart.Layout.Bottom;

    // Relative to the drawing's corner. Nothing else is stroked as thick as the marks.
    private static Marks MarksOf(PaintedChart chart)
    {
        var lines = chart.Paths
            .Where(path => path.IsStroked && Math.Abs((path.LineWidth / PaintedChart.PointsPerMillimetre) - SheetMarks.Thickness) < 0.01)
            .SelectMany(path => path)
            .Select(line => line.GetBoundingRectangle()!.Value)
            .ToList();
        return new Marks(
            Distinct(lines.Where(box => box.Width < box.Height).Select(box => (box.Left / PaintedChart.PointsPerMillimetre) - chart.Left)),
            Distinct(lines.Where(box => box.Width > box.Height).Select(box => chart.PaperHeight - (box.Bottom / PaintedChart.PointsPerMillimetre) - chart.Top)));
    }

    private static List<double> Distinct(IEnumerable<double> values) => [.. values.Select(value => Math.Round(value, 3)).Distinct().Order()];

    private static IEnumerable<(int Row, int Column)> Cells(ChartWindow window) =>
        from row in Enumerable.Range(window.FirstRow, window.Rows)
        from column in Enumerable.Range(window.FirstColumn, window.Columns)
        select (row, column);

    private static List<string> Expected(PatternDocument document)
    {
        var rows = Oracle.Rows(document);
        return [.. Piece.Of(document).PrintedRows().Select(number => string.Concat(rows[number - 1].Over.Select(over => over ? 'x' : '.')))];
    }

    private static List<string> Painted(PatternDocument document, PrintSetting? setting = null)
    {
        var charts = ChartsOf(document, setting ?? PrintSetting.Standard);
        var piece = charts[0].Layout.Piece;
        var cells = new char[piece.PrintedRows().Count(), piece.Ends];
        foreach (var chart in charts)
        {
            foreach (var (row, column) in Cells(chart.Layout.Window))
            {
                var cell = chart.Cell(row, column);
                Assert.True(cells[row, column] is '\0' || cells[row, column] == cell);
                cells[row, column] = cell;
            }
        }

        return [.. Enumerable.Range(0, cells.GetLength(0)).Select(row => string.Concat(Enumerable.Range(0, piece.Ends).Select(end => cells[row, end])))];
    }

    private static PrintSetting SettingOf(string name) => PrintSetting.All.Single(setting => setting.Name == name);

    private static IReadOnlyList<PaintedChart> ChartsOf(PatternDocument document, PrintSetting setting)
    {
        var piece = Piece.Of(document);
        var plan = Printable.Plan(piece, VersionLine.NotIssued, Paper.A4, Wording.English, setting);
        return PaintedChart.Of(Painter.Paint(plan), plan);
    }
}
