using PatternShop.Weave;

namespace PatternShop.Benchmarks;

/// <summary>Charts of any size for measuring.</summary>
internal static class BenchmarkCharts
{
    /// <summary>Cells without order, the same every time.</summary>
    public static BitGrid Scattered(int rows, int ends)
    {
        var state = 0x9E3779B97F4A7C15UL;
        return BitGrid.Create(rows, ends, (_, _) =>
        {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            return (state >> 40 & 1) != 0;
        });
    }

    /// <summary>A first row without order, moved by one end in each next row.</summary>
    public static BitGrid Twill(int side)
    {
        var row = Scattered(1, side);
        return BitGrid.Create(side, side, (r, end) => row[0, (end + side - r) % side]);
    }

    /// <summary>A document whose chart is these cells, each row once.</summary>
    public static PatternDocument Document(BitGrid motif) => new(
        "Benchmark", "en", "", "", motif,
        new WidthPlan(1, 0, 0, null),
        new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, motif.Rows, 1)]),
        new Gauge(new Density(4, DensityUnit.PerInch), new Density(4, DensityUnit.PerInch)),
        GlyphStyle.Cells);
}
