using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Cells that a finding points at, in the motif and in the whole piece.</summary>
public sealed class MarkScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    // The motif of 2 rows of 3 ends from its end 2 on, seven ends, a floating end each side; rows 1, 2, plain, plain, 1, printed as 1–4 and 9.
    private const string Marks = """
        const { PieceMap } = await editor('piece-map');
        const { marksOf } = await editor('marks');
        const map = new PieceMap({
          readings: [[0, 0, 0, 0], [1, 1, 1, 1], [-1, 0, 0, 0], [-2, 1, 0, 1]],
          rows: [0, 1, 2, 3, 0], numbers: [1, 2, 3, 4, 9],
          motifEnds: 3, offset: 1, patternEnds: 7, floating: 1, balance: 1, bands: [],
        });
        const picture = (marks, rows, ends) => Array.from({ length: rows }, (_, row) =>
          Array.from({ length: ends }, (_, end) => marks.has(row, end) ? 'x' : '.').join('')).join('/');
        const show = blocks => {
          const { motif, piece } = marksOf(blocks, map, { rows: 2, ends: 3 });
          return `${picture(motif, 2, 3)} ${picture(piece, 5, 9)}`;
        };
        """;

    [Theory]
    [InlineData("{ of: 'motif', firstRow: 1, lastRow: 1, firstEnd: 0, lastEnd: 0 }", "x../... ...x..x../........./........./........./...x..x..")]
    [InlineData("{ of: 'motif', firstRow: 2, lastRow: 2, firstEnd: 0, lastEnd: 2 }", ".../xxx ........./.xxxxxxx./........./........./.........")]
    [InlineData("{ of: 'piece', firstRow: 1, lastRow: 2, firstEnd: 0, lastEnd: 1 }", ".x./.x. xx......./xx......./........./........./.........")]
    [InlineData("{ of: 'piece', firstRow: 3, lastRow: 4, firstEnd: 8, lastEnd: 8 }", ".../... ........./........./........x/........x/.........")]
    [InlineData("{ of: 'piece', firstRow: 9, lastRow: 9, firstEnd: 3, lastEnd: 3 }", "x../... ........./........./........./........./...x.....")]
    [InlineData("{ of: 'piece', firstRow: 5, lastRow: 8, firstEnd: 3, lastEnd: 3 }", ".../... ........./........./........./........./.........")]
    [InlineData("{ of: 'motif', firstRow: 5, lastRow: 9, firstEnd: 5, lastEnd: 7 }", ".../... ........./........./........./........./.........")]
    public async Task What_is_marked_in_one_chart_is_marked_where_the_other_shows_it(string block, string expected) =>
        Assert.Equal(expected, await page.RunAsync<string>(Marks + $"return show([{block}]);"));

    [Fact]
    public async Task The_first_marked_cell_is_one_of_them_and_nothing_is_empty() => Assert.Equal("2,8 true", await page.RunAsync<string>(Marks + """
        const { motif, piece } = marksOf([{ of: 'piece', firstRow: 3, lastRow: 4, firstEnd: 8, lastEnd: 8 }], map, { rows: 2, ends: 3 });
        return `${piece.first.row},${piece.first.end} ${motif.isEmpty}`;
        """));
}
