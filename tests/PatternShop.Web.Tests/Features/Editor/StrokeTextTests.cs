using System.Globalization;
using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class StrokeTextTests
{
    [Fact]
    public void A_stroke_is_read()
    {
        var stroke = StrokeText.Read("8.8 o0:3-5/2,7 u4:0");
        Assert.Equal(
            GridText.Read("...xxx..", "..x....x", "........", "........", "x.......", "........", "........", "........"),
            stroke!.Cells);
        Assert.Equal(new SetCells(stroke.Cells, GridText.Read("...xxx..", "..x....x", "........", "........", "........", "........", "........", "........")), stroke);
    }

    [Fact]
    public void Numbers_go_up_to_the_largest_motif()
    {
        var stroke = StrokeText.Read("rs.rs orr:0-rr");
        Assert.Equal((1000, 1000, 1000), (stroke!.Cells.Rows, stroke.Cells.Columns, stroke.Cells.Count));
        Assert.True(stroke.Over[999, 999]);
    }

    [Fact]
    public void Letters_of_a_number_are_no_marks()
    {
        // 33 rows of 24 ends: row 30, end 23
        var stroke = StrokeText.Read("x.o ou:n");
        Assert.Equal((33, 24, true), (stroke!.Cells.Rows, stroke.Cells.Columns, stroke.Cells[30, 23]));
    }

    [Fact]
    public void A_box_is_covered_with_a_piece_or_a_copy_put_down()
    {
        // 2 rows of 2 ends, .x first and x. above it: what the script writes for it
        var cover = StrokeText.Read("4.6 c1:1-3:5=2.2:AgE=");
        Assert.Equal(GridText.Read("......", ".xxxxx", ".xxxxx", ".xxxxx"), cover!.Cells);
        Assert.Equal(GridText.Read("......", "..x.x.", ".x.x.x", "..x.x."), cover.Over);
        Assert.Equal(CellsAct.Cover, cover.Act);
        var copy = StrokeText.Read("3.3 p2:2-2:2=2.2:AQI=");
        Assert.Equal((CellsAct.Paste, 1, true), (copy!.Act, copy.Cells.Count, copy.Over[2, 2]));
    }

    [Fact]
    public void A_wide_piece_is_read_whole()
    {
        var piece = BitGrid.Create(3, 130, (row, end) => (row + end) % 3 == 0);
        var covered = StrokeText.Read($"3.3m c0:0-2:3l=3.3m:{MotifCells.Of(piece).Cells}");
        Assert.Equal(piece, covered!.Over);
    }

    [Theory]
    [InlineData("")]
    [InlineData("8.8")]
    [InlineData("8.8 ")]
    [InlineData("8 o0:1")]
    [InlineData("0.8 o0:1")]
    [InlineData("rt.8 o0:1")]
    [InlineData("zzzzz9.8 o0:1")]
    [InlineData("8.8 x0:1")]
    [InlineData("8.8 o")]
    [InlineData("8.8 o1")]
    [InlineData("8.8 o:1")]
    [InlineData("8.8 o0:8")]
    [InlineData("8.8 o8:0")]
    [InlineData("8.8 o7:0/0")]
    [InlineData("8.8 o0:5-3")]
    [InlineData("8.8 o0:-1")]
    [InlineData("8.8 o0:1,")]
    [InlineData("8.8 o0:1 u0:2 o0:3")]
    [InlineData("8.8 O0:1")]
    [InlineData("8.8 o0:1\n")]
    [InlineData("3.3 c")]
    [InlineData("3.3 c1:1-2:2")]
    [InlineData("3.3 c1:1-2:2=2.2")]
    [InlineData("3.3 c1:1-2:2=2.2:AQ==")]
    [InlineData("3.3 c1:1-2:2=2.2:A?I=")]
    [InlineData("3.3 c1:1-2:2=0.2:")]
    [InlineData("3.3 c1:1-2:2=rt.2:AQI=")]
    [InlineData("3.3 c1:1-3:2=2.2:AQI=")]
    [InlineData("3.3 c2:2-1:1=2.2:AQI=")]
    [InlineData("3.3 c1:1-2:2=2.2:AQI= o0:1")]
    [InlineData("3.3 d1:1-2:2=2.2:AQI=")]
    [InlineData("3.3 c1-2:2=2.2:AQI=")]
    public void What_is_no_stroke_is_none(string text) => Assert.Null(StrokeText.Read(text));

    /// <summary>What the script sends for a cover of the largest motif with itself.</summary>
    [Fact]
    public void The_largest_cover_is_one_stroke()
    {
        var bytes = new byte[Bounds.MotifRows * Bounds.MotifEnds / 8];
        for (var at = 0; at < bytes.Length; at++)
        {
            bytes[at] = (byte)(at * 37);
        }

        var stroke = StrokeText.Read($"rs.rs c0:0-rr:rr=rs.rs:{Convert.ToBase64String(bytes)}");
        Assert.NotNull(stroke);
        Assert.Equal(Bounds.MotifRows * Bounds.MotifEnds, stroke.Cells.Count);
        Assert.Equal((true, false, true), (stroke.Over[0, 8], stroke.Over[0, 9], stroke.Over[0, 10]));
        Assert.Equal("cover 1,000,000 cells", Wording.English.EditName(stroke));
    }

    [Fact]
    public void A_text_without_end_is_no_stroke() =>
        Assert.Null(StrokeText.Read("8.8 o" + string.Join('/', Enumerable.Repeat("0:0-7", StrokeText.Most / 5))));

    [Fact]
    public void Whatever_comes_is_a_stroke_or_none()
    {
        var (strokes, texts) = (0, Effort.Of(2_000, 200_000));
        Gen.OneOf(
            Gen.String,
            Gen.Select(Gen.Int[0, 8], Gen.Int[0, 8], Gen.Int[-1, 2], (row, first, more) => string.Create(CultureInfo.InvariantCulture, $"{row}:{first}-{first + more}")).Array[1, 2].Select(cells => "8.8 u" + string.Join('/', cells)),
            Gen.OneOf("8.8", " ", "o", "u", "0", "7", ":", "-", "/", ",", "z").Array[0, 20].Select(string.Concat).Select(text => "8.8 o0:" + text),
            Gen.OneOf("2.2", "1.1", "AQI=", "=", ":", "-", "0", "7", "9", "/").Array[0, 12].Select(string.Concat).Select(text => "8.8 c0:0-" + text)).SampleFixed(
            text =>
            {
                if (StrokeText.Read(text) is { } stroke)
                {
                    Assert.NotEqual(0, stroke.Cells.Count);
                    Interlocked.Increment(ref strokes);
                }
            },
            texts);
        Assert.InRange(strokes, texts / 20, texts / 2);
    }

    [Fact]
    public void Any_stroke_is_read_back_from_its_cells_written_one_by_one() => EditGen.Strokes(9, 40).Sample(
        stroke =>
        {
            var read = StrokeText.Read(OneByOne(stroke));
            Assert.Equal(stroke.Cells, read?.Cells);
            Assert.Equal(stroke.Over.With(stroke.Over, stroke.Cells), read!.Over);
        },
        iter: Effort.Of(300, 10_000));

    private static string OneByOne(SetCells stroke) => "9.14" + string.Concat(new[] { true, false }.Select(over =>
    {
        var cells = from row in Enumerable.Range(0, stroke.Cells.Rows)
                    from end in Enumerable.Range(0, stroke.Cells.Columns)
                    where stroke.Cells[row, end] && stroke.Over[row, end] == over
                    select $"{Base36(row)}:{Base36(end)}";
        return cells.Any() ? $" {(over ? 'o' : 'u')}{string.Join('/', cells)}" : "";
    }));

    private static string Base36(int number) => number < 36
        ? "0123456789abcdefghijklmnopqrstuvwxyz"[number].ToString(CultureInfo.InvariantCulture)
        : Base36(number / 36) + Base36(number % 36);
}
