using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>The chart read back from its SVG and held against the definitions.</summary>
public sealed class ChartLaws
{
    private const double Cell = 6;

    [Fact]
    public void Cells_read_from_the_picture_are_the_chart() => Law.OfDocuments(document => AssertCells(document, document), small: 300, full: 10_000);

    [Theory]
    [InlineData(GlyphStyle.Cells)]
    [InlineData(GlyphStyle.Bars)]
    public void Both_ways_of_drawing_read_the_same(GlyphStyle glyphs) =>
        Law.OfDocuments(document => AssertCells(document with { Glyphs = glyphs }, document), small: 150, full: 5_000);

    [Fact]
    public void A_changed_cell_would_be_seen() => Law.CanFail(document =>
        AssertCells(document, document with { Motif = document.Motif.With(0, 0, !document.Motif[0, 0]) }));

    [Fact]
    public void Row_numbers_are_bold_and_arrows_stand_at_the_side_where_rows_start() => Law.OfDocuments(
        document =>
        {
            var (picture, chart) = Draw(document);
            var rows = Oracle.Rows(document);
            Assert.Equal(chart.Rows.Count, picture.Arrows.Count);
            foreach (var (number, middle, sides) in chart.Rows)
            {
                Assert.Equal(2, sides.Count);
                var left = rows[number - 1].From == Side.Left;
                Assert.Equal((left, !left), (sides[0].Bold, sides[1].Bold));
                var arrow = Assert.Single(picture.Arrows, arrow => Math.Abs(arrow.TipY - middle) < 0.01);
                Assert.Equal(left, arrow.TipX < chart.Ends[0].Middle);
                Assert.Equal(!left, arrow.TipX > chart.Ends[^1].Middle);
            }
        },
        small: 200,
        full: 5_000);

    [Fact]
    public void Floating_ends_stand_apart_behind_a_heavy_line_and_other_ends_close_together() => Law.OfDocuments(
        document =>
        {
            var (picture, chart) = Draw(document);
            var heavy = picture.Lines.Where(line => line.Thickness == 0.7).Select(line => line.X1).Distinct().Order().ToList();
            var apart = new List<double>();
            foreach (var (left, right) in chart.Ends.Zip(chart.Ends.Skip(1)))
            {
                var distance = right.Middle - left.Middle;
                if (left.Name == "F" || right.Name == "F")
                {
                    Assert.True(distance > Cell + 1);
                    apart.Add((left.Middle + right.Middle) / 2);
                }
                else
                {
                    Assert.Equal(Cell, distance, 2);
                }
            }

            Assert.Equal(document.Width.Floating is null ? 0 : 2, apart.Count);
            Assert.Equal(apart.Select(x => Math.Round(x, 2)), heavy.Where(x => x > chart.Ends[0].Middle && x < chart.Ends[^1].Middle).Select(x => Math.Round(x, 2)));
        },
        small: 200,
        full: 5_000);

    [Fact]
    public void Rows_of_one_time_through_stand_close_together_and_times_apart() => Law.OfDocuments(
        document =>
        {
            var piece = Piece.Of(document);
            var (_, chart) = Draw(document);
            foreach (var (lower, upper) in chart.Rows.Zip(chart.Rows.Skip(1)))
            {
                var band = piece.Bands[piece.BandOf(upper.Number)];
                var begins = (upper.Number - band.FirstRow) % band.RowsEachTime == 0;
                Assert.Equal(begins, lower.Middle - upper.Middle > Cell + 1);
                Assert.True(begins || Math.Abs(lower.Middle - upper.Middle - Cell) < 0.01);
            }
        },
        small: 200,
        full: 5_000);

    [Fact]
    public void A_line_stands_at_every_motif() => Law.OfDocuments(
        document =>
        {
            var (picture, chart) = Draw(document);
            var floating = document.Width.Floating is null ? 0 : 1;
            var expected = Enumerable.Range(1, document.Width.Repeats + (document.Width.Balance / document.Motif.Columns))
                .Select(times => times * document.Motif.Columns)
                .Where(end => end < chart.Ends.Count - (2 * floating))
                .Select(end => Math.Round(chart.Ends[end + floating].Middle - (Cell / 2), 2));
            Assert.Equal(expected, picture.Lines.Where(line => line.Thickness == 0.35).Select(line => Math.Round(line.X1, 2)).Distinct().Order());
        },
        small: 200,
        full: 5_000);

    [Fact]
    public void A_part_of_a_chart_shows_exactly_its_cells() => Gen.Select(DocumentGen.Documents, Gen.Int[0, 1000].Array[4]).Sample(
        (document, cut) =>
        {
            var piece = Piece.Of(document);
            var printed = piece.PrintedRows().ToList();
            var (firstRow, firstColumn) = (cut[0] % printed.Count, cut[1] % piece.Ends);
            var window = new ChartWindow(firstRow, 1 + (cut[2] % (printed.Count - firstRow)), firstColumn, 1 + (cut[3] % (piece.Ends - firstColumn)));
            var layout = new ChartLayout(piece, window, Cell, legend: false, Wording.English);
            var picture = SvgPicture.Parse(SvgText.Of(ChartDrawing.Of(layout, Wording.English), "Part", "", "part"));
            var chart = ReadChart.Of(picture, Cell);
            Assert.Equal(printed.Skip(window.FirstRow).Take(window.Rows), chart.Rows.Select(row => row.Number));
            Assert.Equal(Enumerable.Range(window.FirstColumn, window.Columns).Select(piece.EndName), chart.Ends.Select(end => end.Name));
            var rows = Oracle.Rows(document);
            Assert.All(
                from row in Enumerable.Range(0, window.Rows) from column in Enumerable.Range(0, window.Columns) select (row, column),
                at => Assert.Equal(rows[chart.Rows[at.row].Number - 1].Over[window.FirstColumn + at.column], chart.IsOver(at.row, at.column)));
        },
        iter: Effort.Of(200, 5_000));

    [Theory]
    [InlineData(2.2)]
    [InlineData(3)]
    [InlineData(Cell)]
    [InlineData(10)]
    public void Nothing_is_painted_outside_the_picture(double cell) => Law.OfDocuments(
        document =>
        {
            var drawing = ChartDrawing.Of(Piece.Of(document), cell, Wording.English);
            foreach (var shape in drawing.Shapes)
            {
                var (left, right, top, bottom) = Extent(shape);
                Assert.True(left > -0.01 && top > -0.01 && right < drawing.Width + 0.01 && bottom < drawing.Height + 0.01, shape.ToString());
            }
        },
        small: 200,
        full: 5_000);

    [Fact]
    public void Brackets_name_repeated_closing_rows_and_balance_ends()
    {
        var document = Charts.Document(Charts.TenEndDiamond, repeats: 2, balance: 1, floating: Charts.AlikeOver, steps: [new PlainRows(2, 1), new Repeat(3, [new ChartRows(1, 10, 1)]), new ChartRows(1, 1, 1)]);
        Assert.Equal(["3 times", "closing, once", "1 balance end"], Words(document));
        Assert.Equal(["times 1 and 3", "time 2"], Words(Charts.Document("xx./.xx/x.x", steps: [new Repeat(3, [new ChartRows(1, 3, 1)])])));

        static IEnumerable<string> Words(PatternDocument document) => Draw(document).Picture.Texts
            .Where(text => text.Text.Length > 1 && !text.Text.All(char.IsAsciiDigit))
            .Select(text => text.Text)
            .Except([Wording.English.OverLegend, Wording.English.UnderLegend, Wording.English.FloatingLegend], StringComparer.Ordinal);
    }

    private static (SvgPicture Picture, ReadChart Chart) Draw(PatternDocument document)
    {
        var drawing = ChartDrawing.Of(Piece.Of(document), Cell, Wording.English);
        var picture = SvgPicture.Parse(SvgText.Of(drawing, document.Title, "", "chart"));
        return (picture, ReadChart.Of(picture, Cell));
    }

    private static void AssertCells(PatternDocument drawn, PatternDocument document)
    {
        var (_, chart) = Draw(drawn);
        var rows = Oracle.Rows(document);
        Assert.Equal(Piece.Of(document).PrintedRows(), chart.Rows.Select(row => row.Number));
        Assert.Equal(rows[0].Over.Count, chart.Ends.Count);
        for (var row = 0; row < chart.Rows.Count; row++)
        {
            Assert.Equal(rows[chart.Rows[row].Number - 1].Over, Enumerable.Range(0, chart.Ends.Count).Select(column => chart.IsOver(row, column)));
        }
    }

    // Texts by the widest that words and numbers of this kind are in the font of the charts, Atkinson Hyperlegible Next (measured: 0.48 em a letter, bold 0.51, digits 0.59).
    private static (double Left, double Right, double Top, double Bottom) Extent(Shape shape)
    {
        switch (shape)
        {
            case Box box:
                return (box.X, box.X + box.Width, box.Y, box.Y + box.Height);
            case Line line:
                return (Math.Min(line.X1, line.X2), Math.Max(line.X1, line.X2), Math.Min(line.Y1, line.Y2), Math.Max(line.Y1, line.Y2));
            case Triangle t:
                return (Math.Min(t.X1, Math.Min(t.X2, t.X3)), Math.Max(t.X1, Math.Max(t.X2, t.X3)), Math.Min(t.Y1, t.Y2), Math.Max(t.Y1, t.Y3));
            case Label label:
                var width = label.Text.Length * label.Size * (label.Text.All(char.IsAsciiDigit) ? 0.59 : label.Bold ? 0.51 : 0.48);
                var left = label.Anchor switch { TextAnchor.Start => label.X, TextAnchor.Middle => label.X - (width / 2), _ => label.X - width };
                return (left, left + width, label.Y - (label.Size * 0.75), label.Y + (label.Size * 0.25));
            default:
                throw new InvalidOperationException(shape.ToString());
        }
    }
}
