using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>The words themselves, letter by letter, as readers see them. Snapshots of our own wording, no outside source.</summary>
public sealed class WordingTests
{
    private static readonly Wording Words = Wording.English;

    // "Whole pieces" 1 of the outside values: 23 ends, 22 rows, and what each row reads
    private static readonly PatternDocument Diamond = Charts.DiamondPiece;

    [Fact]
    public void Counting_rules_and_arithmetic_of_the_diamond()
    {
        var piece = Piece.Of(Diamond);
        Assert.Equal("a multiple of 10, plus 1, plus 2 floating selvedges", Words.EndsRule(piece));
        Assert.Equal("2 × 10 = 20, + 1 balance end, + 2 floating selvedges = 23 ends", Words.WarpArithmetic(piece));
        Assert.Equal("a multiple of 10, plus 2 closing rows", Words.RowsRule(piece));
        Assert.Equal("2 × 10 + 2 closing rows = 22 rows", Words.RowArithmetic(piece));
        Assert.Equal("5 ends per inch; width on the loom 4.6 in (11.7 cm)", Words.WidthText(piece));
        Assert.Equal("2 × 10 + 2 closing rows = 22 rows; 4 rows per inch; woven length 5.5 in (14 cm)", Words.LengthText(piece));
    }

    [Theory]
    [InlineData("xx.", 4, 0, "a multiple of 3", "4 × 3 = 12 ends")]
    [InlineData("xx.", 4, 2, "a multiple of 3, plus 2", "4 × 3 = 12, + 2 balance ends = 14 ends")]
    [InlineData("x", 1, 0, "a multiple of 1", "1 × 1 = 1 end")]
    public void Counting_rules_without_floating_selvedges(string chart, int repeats, int balance, string rule, string arithmetic)
    {
        var piece = Piece.Of(Charts.Document(chart, repeats, balance: balance));
        Assert.Equal((rule, arithmetic), (Words.EndsRule(piece), Words.WarpArithmetic(piece)));
    }

    [Fact]
    public void Counting_rules_for_rows()
    {
        static Piece With(params RowStep[] steps) => Piece.Of(Charts.Document("xx./.xx", steps: steps));
        var repeat = new Repeat(3, [new ChartRows(1, 2, 1)]);
        Assert.Equal("2 rows", Words.RowsRule(With(new ChartRows(1, 2, 1))));
        Assert.Equal("2 rows", Words.RowArithmetic(With(new ChartRows(1, 2, 1))));
        Assert.Equal("a multiple of 2, plus 1 row before, plus 3 closing rows", Words.RowsRule(With(new PlainRows(1, 1), repeat, new PlainRows(3, 1))));
        Assert.Equal("1 row + 3 × 2 + 3 closing rows = 10 rows", Words.RowArithmetic(With(new PlainRows(1, 1), repeat, new PlainRows(3, 1))));
        Assert.Equal("13 rows", Words.RowsRule(With(repeat, new PlainRows(1, 1), repeat)));
        Assert.Equal("3 × 2 + 1 row + 3 × 2 = 13 rows", Words.RowArithmetic(With(repeat, new PlainRows(1, 1), repeat)));
    }

    [Theory]
    [InlineData("4", DensityUnit.PerInch, "4 ends per inch")]
    [InlineData("4.125", DensityUnit.PerCentimetre, "4.125 ends per cm")]
    [InlineData("0.0004", DensityUnit.PerTenCentimetres, "0.0004 ends per 10 cm")]
    [InlineData("10.50", DensityUnit.PerInch, "10.5 ends per inch")]
    public void Densities_are_shown_as_typed(string amount, DensityUnit unit, string text) =>
        Assert.Equal(text, Words.DensityOf("ends", new Density(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), unit)));

    [Fact]
    public void Written_rows_name_their_side_and_an_equal_row_before_them()
    {
        var piece = Piece.Of(Diamond);
        Assert.Equal("Row 5 from the left →: [over 3, under 2, over 1, under 1, over 1, under 2] × 2, over 3", Words.WrittenRow(piece, 5));
        Assert.Equal("Row 6 ← from the right: under 2, over 2, under 2, over 1, under 2, over 2, under 1, over 2, under 2, over 1, under 2, over 2, under 2", Words.WrittenRow(piece, 6));
        Assert.StartsWith("Row 7 (same as row 5) from the left →: [over 3, ", Words.WrittenRow(piece, 7), StringComparison.Ordinal);
        Assert.StartsWith("Row 21 (chart row 1, same as row 1) from the left →: ", Words.WrittenRow(piece, 21), StringComparison.Ordinal);
        Assert.Equal("Row 22 (plain) ← from the right: [under 1, over 1] × 11, under 1", Words.WrittenRow(piece, 22));
    }

    [Fact]
    public void Brackets_inside_brackets_are_round()
    {
        var piece = Piece.Of(Charts.Document("x.x.xx..", repeats: 3, balance: 1));
        Assert.Equal("[(over 1, under 1) × 2, over 2, under 2] × 3, over 1", Words.WritingText(piece.Reading(1).Writing));
    }

    [Fact]
    public void The_makers_words_stand_below_their_row_and_are_marked()
    {
        var document = Diamond with
        {
            Notes = "Leave long tails.",
            RowWords = [new RowWords(2, "Beat gently.\nMind the edge.")],
            Videos = [new Video("https://films.example/turn", "The turn", 2), new Video("https://films.example/all", "All of it", null)],
        };
        var lines = WrittenDirections.Text(Piece.Of(document), Words).Split('\n');
        foreach (var row in new[] { 2, 12 }.Where(row => lines.Any(line => line.StartsWith($"Row {row} ", StringComparison.Ordinal))))
        {
            var at = Array.FindIndex(lines, line => line.StartsWith($"Row {row} ", StringComparison.Ordinal));
            Assert.Equal(["  Maker's note: Beat gently.", "    Mind the edge.", "  Maker's video: The turn: https://films.example/turn"], lines[(at + 1)..(at + 4)]);
        }

        Assert.Equal(["In the maker's own words and pictures", "Leave long tails.", "Maker's video: All of it: https://films.example/all", ""], lines[^4..]);
        Assert.Equal(1, lines.Count(line => line.Contains("Beat gently", StringComparison.Ordinal)));
    }

    [Fact]
    public void Places_say_row_time_and_number()
    {
        var piece = Piece.Of(Diamond);
        Assert.Equal("Row 4 of 10 · time 2 of 2 (row 14 of 22)", Words.PlaceText(piece, 14));
        Assert.Equal("Row 22 of 22", Words.PlaceText(piece, 22));
    }

    [Fact]
    public void Floats_are_runs_of_two_or_more()
    {
        Assert.Equal("Longest floats: weft over 3 ends, weft under 3 ends, end over 3 rows, end under 3 rows.", Words.FloatsText(Floats.Longest(Piece.Of(Diamond))));
        Assert.Equal("Longest floats: weft over 2 ends.", Words.FloatsText(new LongestFloats(2, 1, 1, 1)));
        Assert.Equal("No floats.", Words.FloatsText(Floats.Longest(Piece.Of(Charts.Document("x./.x")))));
    }

    [Fact]
    public void Edges_and_offset_are_sentences()
    {
        Assert.Equal("Floating selvedges (F): go over both in the first row, under both in the next, and so on in turn.", Words.EdgesText(Piece.Of(Diamond)));
        Assert.Equal(
            "Floating selvedges (F): go under both in the first row, over both in the next, and so on in turn.",
            Words.EdgesText(Piece.Of(Charts.Document("xx.", floating: Charts.AlikeUnder))));
        Assert.Equal(
            "Floating selvedges (F): go over the one you enter by and under the one you leave by, in every row.",
            Words.EdgesText(Piece.Of(Charts.Document("xx.", floating: Charts.EnteringOver))));
        Assert.Equal("No floating selvedges.", Words.EdgesText(Piece.Of(Charts.Document("xx."))));
        Assert.Equal("The first pattern end is end 3 of the motif.", Words.OffsetText(Piece.Of(Charts.Document("xx..", offset: 2))));
        Assert.Equal("", Words.OffsetText(Piece.Of(Diamond)));
        Assert.Equal("Row 1, at the bottom of the chart, starts at the left.", Words.StartText(Piece.Of(Diamond)));
        Assert.Equal("Row 1, at the bottom of the chart, starts at the right.", Words.StartText(Piece.Of(Charts.Document("xx.", start: Side.Right))));
    }

    // 23 ends at 5 per inch, 22 rows: 22 × 4.6 × 1.1 = 111.32 in to 121.44 in of weft, rounded up to tenths of a yard.
    [Fact]
    public void Weft_by_rule_of_thumb_is_rounded_up_and_says_what_it_is()
    {
        Assert.Equal(
            "Weft: about 3.1 yd to 3.4 yd, by rule of thumb (one width and 10 to 20 % a row; tails not counted). Weave a sample to be sure.",
            Words.WeftEstimate(Piece.Of(Diamond)));
        var twined = Charts.Document("xx.", steps: [new EdgeStitch("twining", StitchYarn.Working, 2, Side.Left, 1), new ChartRows(1, 1, 1)]);
        Assert.Contains("tails and edge stitches not counted", Words.WeftEstimate(Piece.Of(twined)), StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_part_thousands_and_keep_two_decimals()
    {
        Assert.Equal(["1", "999", "1,000", "100,000"], new[] { 1, 999, 1000, 100_000 }.Select(Words.Number));
        Assert.Equal(["6.75", "0.13", "2"], new[] { 6.75m, 0.125m, 2.000m }.Select(Words.Number));
        Assert.Equal(["once", "twice", "3 times", "1,200 times"], new[] { 1, 2, 3, 1200 }.Select(Words.Times));
    }
}
