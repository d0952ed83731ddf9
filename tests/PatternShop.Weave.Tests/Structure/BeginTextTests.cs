using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>Typed runs, pasted cells and typed orders of threads.</summary>
public sealed class BeginTextTests
{
    private const string Twill = "xx.. / .xx. / ..xx / x..x";

    [Theory]
    [InlineData("o2 u2 / u1 o2 u1 / u2 o2 / o1 u2 o1", RowOne.Top, RunsFrom.Left)]
    [InlineData("o2u2/u1o2u1/u2o2/o1u2o1", RowOne.Top, RunsFrom.Left)]
    [InlineData("over 2, under 2\r\nunder 1, over 2, under 1\r\nunder 2, over 2\r\nover 1, under 2, over 1\r\n", RowOne.Top, RunsFrom.Left)]
    [InlineData("\nOver 1, Under 2, Over\n\nunder 2; over 2.\nu o2 u\no2 u 2", RowOne.Bottom, RunsFrom.Left)]
    [InlineData("u2 o2 / u1 o2 u1 / o2 u2 / o1 u2 o1", RowOne.Top, RunsFrom.Right)]
    [InlineData("o2 u2 / u1 o2 u1 / u2 o2 / o1 u2 o1", RowOne.Top, RunsFrom.InTurnFromLeft)]
    [InlineData("u2 o2 / u1 o2 u1 / o2 u2 / o1 u2 o1", RowOne.Top, RunsFrom.InTurnFromRight)]
    [InlineData("Row 1 from the left →: over 2, under 2\nRow 2 (time 2) ← from the right: u1 o2 u1\n← from the right: o2 u2\nRow 4: o1 u2 o1", RowOne.Top, RunsFrom.Left)]
    public void The_twill_is_read_however_its_runs_are_written(string text, RowOne rowOne, RunsFrom from) =>
        Assert.Equal(Twill, Made(TypedRuns.Read(text, rowOne, from)).ToString());

    [Theory]
    [InlineData("[u1 o1]×11 u1", 23)]
    [InlineData("[under 1, over 1] × 11, under 1", 23)]
    [InlineData("(u o) 11 times u", 23)]
    [InlineData("[o u]x3", 6)]
    [InlineData("[o u] * 3 u2", 8)]
    [InlineData("[[o1 u1] twice, o2] × 2", 12)]
    public void Brackets_are_written_out(string text, int ends) => Assert.Equal(ends, Made(TypedRuns.Read(text, RowOne.Top, RunsFrom.Left)).Columns);

    [Fact]
    public void The_products_own_directions_are_read_back() => Law.OfDocuments(
        document =>
        {
            var piece = Piece.Of(document);
            var rows = piece.PrintedRows().ToList();
            var text = string.Join('\n', rows.Select(row => Wording.English.DirectionsText(piece.Reading(row))));
            var read = Made(TypedRuns.Read(text, RowOne.Top, RunsFrom.Left));
            Assert.Equal(BitGrid.Create(rows.Count, piece.Ends, (row, end) => piece.At(rows[row], end) == Stroke.Over), read);
        },
        500,
        20_000);

    [Theory]
    [InlineData("", BeginProblemCodes.RunsEmpty, 1, 1)]
    [InlineData("o2 u2\no2 v2", BeginProblemCodes.RunsWord, 2, 4)]
    [InlineData("o2 u2 / o2 😀", BeginProblemCodes.RunsWord, 1, 12)]
    [InlineData("o2 u0", BeginProblemCodes.RunsCount, 1, 5)]
    [InlineData("over 99999999999", BeginProblemCodes.RunsCount, 1, 6)]
    [InlineData("[o1 u1", BeginProblemCodes.RunsBracket, 1, 1)]
    [InlineData("o1 ] × 2", BeginProblemCodes.RunsBracket, 1, 4)]
    [InlineData("o1 [] × 2", BeginProblemCodes.RunsBracket, 1, 4)]
    [InlineData("[[[o u]×2]×2]×2", BeginProblemCodes.RunsBracket, 1, 3)]
    [InlineData("[o u] u2", BeginProblemCodes.RunsTimes, 1, 7)]
    [InlineData("[o u] × 0", BeginProblemCodes.RunsTimes, 1, 9)]
    [InlineData("o2 u2\nu4\nu1 o2", BeginProblemCodes.RunsRowLength, 3, 1)]
    [InlineData("o1 [o1000]x1000", BeginProblemCodes.RunsTooWide, 1, 10)]
    [InlineData("o600 u600", BeginProblemCodes.RunsTooWide, 1, 6)]
    public void What_is_wrong_with_runs_is_said_by_line_and_column_with_a_remedy(string text, string code, int line, int column) =>
        AssertProblem(code, line, column, Assert.IsType<WeaveResult.Refused>(TypedRuns.Read(text, RowOne.Top, RunsFrom.Left)).Problems[0]);

    [Fact]
    public void Too_much_is_refused_and_many_problems_are_counted()
    {
        AssertProblem(BeginProblemCodes.RunsTooManyRows, 1001, 1, Refused(string.Concat(Enumerable.Repeat("o1 u1\n", 1001)))[0]);
        var many = Refused(string.Concat(Enumerable.Repeat("?\n", 300)));
        Assert.Equal((201, BeginProblemCodes.MoreProblems), (many.Count, many[^1].Code));
        Assert.Equal(BeginProblemCodes.TextTooLong, Refused(new string(' ', 4_000_001))[0].Code);

        static Sequence<Problem> Refused(string text) => Assert.IsType<WeaveResult.Refused>(TypedRuns.Read(text, RowOne.Top, RunsFrom.Left)).Problems;
    }

    [Fact]
    public void No_text_makes_the_reader_fail() => Gen.OneOf("o", "u", "over", "under", "2", "0", "[", "]", "(", "×", "x", "*", "times", "twice", "/", "\n", "\r\n", " ", ",", ":", "left", "right", "\"", "\t", "-", "é", "😀", "\uFEFF")
        .Array[0, 14].Select(string.Concat).Sample(
            text =>
            {
                foreach (var problem in TypedRuns.Read(text, RowOne.Bottom, RunsFrom.InTurnFromRight) is WeaveResult.Refused refused ? refused.Problems : [])
                {
                    Assert.InRange(problem.Line, 1, text.Count(c => c == '\n') + 1);
                    Assert.InRange(problem.Column, 1, text.Length + 1);
                    Assert.True(problem.What.Length > 0 && problem.Remedy.Length > 0);
                }

                _ = PastedCells.Read(text);
                _ = ThreadOrder.Read(text, 4, 20);
            },
            iter: Effort.Of(3_000, 100_000));

    [Fact]
    public void Pasted_cells_ask_what_filled_means_and_where_row_1_is()
    {
        var table = Table("x\tx\t\t\r\n\tx\tx\t\r\n \t\u00A0\tx\tx\r\nx\t\t\tx\r\n");
        Assert.Equal("xx.. / .xx. / ..xx / x..x", table.Filled.ToString());
        Assert.Equal(Twill, table.Motif(Stroke.Over, RowOne.Top).ToString());
        Assert.Equal("x..x / ..xx / .xx. / xx..", table.Motif(Stroke.Over, RowOne.Bottom).ToString());
        Assert.Equal(Transforms.Swap(table.Filled), table.Motif(Stroke.Under, RowOne.Top));
        Assert.Equal([new CellText("x", 8)], table.Texts);
        Assert.Empty(table.FilledUp);
    }

    [Fact]
    public void Shorter_lines_quotes_and_line_ends_inside_cells_are_read()
    {
        var table = Table("\"a\tb\"\t\"say \"\"x\"\"\"\t\n1\n\"two\nlines\"\t\t\t2");
        Assert.Equal("xx.. / x... / x..x", table.Filled.ToString());
        Assert.Equal([1, 2], table.FilledUp);
        Assert.Equal(["1", "2", "a\tb", "say \"x\"", "two\nlines"], table.Texts.Select(text => text.Text));
        Assert.Equal("x. / .x", Table("x\t\r\tx").Filled.ToString());
    }

    [Theory]
    [InlineData("", BeginProblemCodes.CellsEmpty, 1, 1)]
    [InlineData("\t\t\n\t \t\n", BeginProblemCodes.CellsBlank, 1, 1)]
    [InlineData("x\tx\nx\t\"y\tx\n", BeginProblemCodes.CellsQuote, 2, 3)]
    public void What_is_wrong_with_cells_is_said(string text, string code, int line, int column) =>
        AssertProblem(code, line, column, Assert.IsType<PastedCells.Refused>(PastedCells.Read(text)).Problems[0]);

    [Fact]
    public void Cells_beyond_the_bounds_are_refused()
    {
        AssertProblem(BeginProblemCodes.CellsTooManyRows, 1001, 1, Refused(string.Concat(Enumerable.Repeat("x\t\n", 1001))));
        AssertProblem(BeginProblemCodes.CellsTooWide, 2, 1, Refused("x\n" + new string('\t', 1000) + "x"));
        Assert.Equal(BeginProblemCodes.TextTooLong, Refused(new string('x', 4_000_001)).Code);

        static Problem Refused(string text) => Assert.IsType<PastedCells.Refused>(PastedCells.Read(text)).Problems[0];
    }

    [Fact]
    public void Cells_that_were_written_out_are_read_back() => DocumentGen.Motifs(9, 9).Where(motif => motif.Count > 0).Sample(motif =>
    {
        var text = string.Join("\r\n", Enumerable.Range(0, motif.Rows).Select(row => string.Join('\t', Enumerable.Range(0, motif.Columns).Select(end => motif[row, end] ? "x" : ""))));
        Assert.Equal(motif, Table(text + "\r\n").Motif(Stroke.Over, RowOne.Top));
    });

    [Fact]
    public void A_weave_is_drawn_by_orders_of_ends_and_rows()
    {
        // "Whole pieces" 1: six-shaft twill on ends 1 2 3 4 5 6 5 4 3 2 in the same order of rows; the point on a shared end has 10 ends (Wolfensberger p. 11: 2n - 2)
        var twill = Made(Twills.Regular("1/1/2/2"));
        Assert.Equal(GridText.Read(Charts.TenEndDiamond.Split('/')), Made(Twills.Drawn(twill, "1-6, 5-2", "1 2 3 4 5 6 5 4 3 2")));
        Assert.Equal(Twills.Point(twill), Made(Twills.Drawn(twill, "1–6 5 4 3 2", "")));
        Assert.Equal(10, Twills.Point(twill).Columns);
        Assert.Equal(Twills.Diamond(twill, PointWay.Shared), Made(Twills.Drawn(twill, "1-6, 5-2", "1-6\n5-2")));
        Assert.Equal(Twills.Diamond(twill, PointWay.Continued), Made(Twills.Drawn(twill, "1-6, 1, 6-2", "1-6, 1\n6-2")));
    }

    [Theory]
    [InlineData("1-4 5", "1", "/ends", BeginProblemCodes.OrderThread, 1, 5)]
    [InlineData("1", "1-4\n2 b", "/rows", BeginProblemCodes.OrderWord, 2, 3)]
    [InlineData("1-2-3", "", "/ends", BeginProblemCodes.OrderWord, 1, 1)]
    [InlineData("0", "", "/ends", BeginProblemCodes.OrderThread, 1, 1)]
    [InlineData(",", "", "/ends", BeginProblemCodes.OrderEmpty, 1, 1)]
    public void What_is_wrong_with_an_order_is_said(string ends, string rows, string pointer, string code, int line, int column)
    {
        var problem = Assert.IsType<WeaveResult.Refused>(Twills.Drawn(Made(Twills.Regular("2/2")), ends, rows)).Problems[0];
        AssertProblem(code, line, column, problem);
        Assert.Equal(pointer, problem.Pointer);
    }

    [Fact]
    public void An_order_that_is_too_long_is_refused() =>
        Assert.Equal(BeginProblemCodes.OrderTooLong, Assert.IsType<OrderResult.Refused>(ThreadOrder.Read("1-4 1-4 1-4", 4, 10)).Problems[0].Code);

    private static void AssertProblem(string code, int line, int column, Problem problem)
    {
        Assert.Equal((code, line, column), (problem.Code, problem.Line, problem.Column));
        Assert.True(problem.What.Length > 0 && problem.Remedy.Length > 0);
    }

    private static BitGrid Made(WeaveResult result) => Assert.IsType<WeaveResult.Made>(result).Motif;

    private static PastedCells.Table Table(string text) => Assert.IsType<PastedCells.Table>(PastedCells.Read(text));
}
