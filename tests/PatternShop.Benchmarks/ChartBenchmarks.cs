using BenchmarkDotNet.Attributes;
using PatternShop.Weave;

namespace PatternShop.Benchmarks;

/// <summary>The chart of a 100 × 100 twill as SVG: cells joined into few shapes, against one rectangle or line a cell.</summary>
[MemoryDiagnoser]
public class ChartBenchmarks
{
    private const double Cell = 6;
    private readonly Piece _piece = Piece.Of(new PatternDocument(
        "Benchmark", "en", "", "",
        BitGrid.Create(100, 100, (row, end) => (end + 400 - row) % 4 < 2),
        new WidthPlan(1, 0, 0, null),
        new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, 100, 1)]),
        new Gauge(new Density(4, DensityUnit.PerInch), new Density(4, DensityUnit.PerInch)),
        GlyphStyle.Cells));

    [Benchmark(Baseline = true, Description = "one shape a cell")]
    public int ShapeACell()
    {
        var shapes = new List<Shape>();
        for (var row = 0; row < 100; row++)
        {
            for (var end = 0; end < 100; end++)
            {
                var (x, y) = (end * Cell, (99 - row) * Cell);
                shapes.Add(_piece.At(row + 1, end) == Stroke.Over
                    ? new Box(x + 0.3, y + 0.3, Cell - 0.6, Cell - 0.6, Shade.Dark)
                    : new Line(x + (Cell / 2), y + 0.3, x + (Cell / 2), y + Cell - 0.3, Cell * Glyphs.UnderLine, Shade.Black));
            }
        }

        return SvgText.Of(new Drawing(100 * Cell, 100 * Cell, shapes.ToSequence()), "Benchmark", "", "b").Length;
    }

    [Benchmark(Description = "joined cells (ours)")]
    public int Joined()
    {
        var shapes = new List<Shape>();
        Glyphs.Add(shapes, BitGrid.Create(100, 100, (row, end) => _piece.At(100 - row, end) == Stroke.Over), new CellArea(0, 0, Cell), GlyphStyle.Cells);
        return SvgText.Of(new Drawing(100 * Cell, 100 * Cell, shapes.ToSequence()), "Benchmark", "", "b").Length;
    }

    [Benchmark(Description = "the whole chart with numbers, arrows and legend")]
    public int WholeChart() => SvgText.Of(ChartDrawing.Of(_piece, Cell, Wording.English), "Benchmark", "", "b").Length;
}
