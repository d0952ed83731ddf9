using System.Text.RegularExpressions;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>The order of work in words, letter by letter. Snapshots of our own wording, no outside source.</summary>
public sealed partial class ScheduleWordingTests
{
    private static readonly Wording Words = Wording.English;
    private const string LeaveAlone = "; leave the floating selvedges alone";
    private static readonly EdgeStitch Own = new("twining", StitchYarn.Own, 2, Side.Right, 1);
    private static readonly EdgeStitch Working = new("twining", StitchYarn.Working, 1, Side.Left, 1);

    [Fact]
    public void Repeated_rows_then_closing_rows() => Assert.Equal(
        ["Rows 1–2, once: 2 plain rows", "Rows 3–12, 3 times: chart rows 1–10", "Closing rows 33–34, once: chart row 1, then 1 plain row"],
        Lines(Charts.Document(Charts.TenEndDiamond, steps: [new PlainRows(2, 1), new Repeat(3, [new ChartRows(1, 10, 1)]), new ChartRows(1, 1, 1), new PlainRows(1, 1)])));

    [Fact]
    public void One_closing_row_and_rows_downwards() => Assert.Equal(
        ["Rows 1–10, twice: chart rows 1–6, then chart rows 5–2 (downwards)", "Closing row 21, once: chart row 1"],
        Lines(Charts.Document(Charts.TenEndDiamond, steps: [new Repeat(2, [new ChartRows(1, 6, 1), new ChartRows(5, 2, 1)]), new ChartRows(1, 1, 1)])));

    [Fact]
    public void Edge_stitches_before_after_and_among_rows() => Assert.Equal(
        [
            "Twining, twice across from the right, with its own yarn; leave the floating selvedges alone",
            "Rows 1–2, 4 times: chart rows 1–2; before row 1 twining, twice across from the right, with its own yarn; after row 2 twining, twice across from the right, with its own yarn; leave the floating selvedges alone",
            "Twining, once across from the left, with the weft you are weaving with; leave the floating selvedges alone",
        ],
        Lines(Charts.Document("xx./.xx", floating: Charts.AlikeUnder, steps: [Own, new Repeat(4, [Own, new ChartRows(1, 2, 1), Own]), Working])));

    [Fact]
    public void Nothing_is_said_of_floating_selvedges_where_there_are_none() => Assert.Equal(
        ["Row 1, once: chart row 1", "Twining, twice across from the right, with its own yarn, 3 times"],
        Lines(Charts.Document("xx.", steps: [new ChartRows(1, 1, 1), new Repeat(3, [Own])])));

    [Fact]
    public void Several_wefts_are_named_and_say_where_they_start()
    {
        var document = Charts.Document("xx./.xx", floating: Charts.AlikeUnder) with
        {
            Rows = new RowPlan([new Weft(Side.Left), new Weft(Side.Right)], Stroke.Under, [new Repeat(3, [new ChartRows(1, 2, 1), new ChartRows(1, 1, 2), Working with { Weft = 2 }])]),
        };
        var piece = Piece.Of(document);
        Assert.Equal(
            ["Rows 1–3, 3 times: chart rows 1–2 with weft 1, then chart row 1 with weft 2; after rows 3 and 6 twining, once across from the left, with weft 2; leave the floating selvedges alone"],
            Lines(document));
        Assert.Equal("Row 1, at the bottom of the chart, starts at the left. Weft 2 starts in row 3, at the right.", Words.StartText(piece));
        Assert.EndsWith(" Each weft keeps its own count.", Words.EdgesText(piece), StringComparison.Ordinal);
        Assert.StartsWith("All wefts together: about ", Words.WeftEstimate(piece), StringComparison.Ordinal);
        Assert.Equal("Row 3 (chart row 1, weft 2) ← from the right: ", Words.WrittenRow(piece, 3)[..46]);
    }

    [Theory]
    [InlineData(2, "rows 1–3 are for time 1, rows 4–6 for time 2.")]
    [InlineData(3, "rows 1–3 are for times 1 and 3, rows 4–6 for time 2.")]
    [InlineData(4, "rows 1–3 are for times 1 and 3, rows 4–6 for times 2 and 4.")]
    [InlineData(5, "rows 1–3 are for times 1, 3 and 5, rows 4–6 for times 2 and 4.")]
    [InlineData(20, "rows 1–3 are for times 1, 3, 5 … 19, rows 4–6 for times 2, 4, 6 … 20.")]
    public void Odd_repeated_rows_say_which_rows_are_for_which_time(int times, string end) => Assert.Equal(
        "There are 3 repeated rows, an odd number, so every other time starts from the other side: " + end,
        TwoReadings(Charts.Document("xx./.xx/x.x", steps: [new Repeat(times, [new ChartRows(1, 3, 1)])])));

    [Fact]
    public void One_repeated_row_is_said_in_the_singular() => Assert.Equal(
        "There is 1 repeated row, an odd number, so every other time starts from the other side: row 1 is for times 1 and 3, row 2 for time 2.",
        TwoReadings(Charts.Document("xx.", steps: [new Repeat(3, [new ChartRows(1, 1, 1)])])));

    [Fact]
    public void What_differs_the_second_time_is_named()
    {
        Assert.Equal(
            "There are 3 repeated rows, an odd number, so every other time the floating selvedges go the other way: rows 1–3 are for time 1, rows 4–6 for time 2.",
            TwoReadings(Charts.Document("xx./.xx/x.x", floating: Charts.AlikeUnder, steps: [new Repeat(2, [new ChartRows(1, 3, 1), Working])])));
        Assert.Equal(
            "There are 3 repeated rows, an odd number, so every other time the plain rows go the other way: rows 1–3 are for time 1, rows 4–6 for time 2.",
            TwoReadings(Charts.Document("xx./.xx", steps: [new Repeat(2, [new ChartRows(1, 2, 1), new PlainRows(1, 1), Working])])));
        Assert.Equal(
            "There are 3 repeated rows, an odd number, so every other time weft 2 starts from the other side: rows 1–3 are for time 1, rows 4–6 for time 2.",
            TwoReadings(TwoWefts(new Repeat(2, [new ChartRows(1, 2, 1), new ChartRows(1, 1, 2)]))));
        Assert.Equal(
            "Every other time starts from the other side: rows 1–2 are for time 1, rows 3–4 for time 2.",
            TwoReadings(TwoWefts(new Repeat(2, [new ChartRows(1, 1, 1), new ChartRows(1, 1, 2)]))));
        Assert.Equal(
            "Every other time an edge stitch begins at the other side: rows 1–2 are for time 1, rows 3–4 for time 2.",
            TwoReadings(TwoWefts(new Repeat(2, [new ChartRows(1, 2, 1), Working with { Weft = 2 }]))));
        Assert.Equal("", TwoReadings(Charts.Document("xx./.xx", steps: [new Repeat(2, [new ChartRows(1, 2, 1)])])));
    }

    [Fact]
    public void A_stitch_that_turns_round_is_said_for_both_times() => Assert.Equal(
        ["Rows 1–2, twice: chart rows 1–2 with weft 1; after row 2 twining, once across from the left, with weft 2; after row 4 twining, once across from the right, with weft 2"],
        Lines(TwoWefts(new Repeat(2, [new ChartRows(1, 2, 1), Working with { Weft = 2 }]))));

    // Three repeated rows are printed twice, as rows 1–3 and 4–6: who has woven row 6 has to find the stitch there too.
    [Fact]
    public void A_stitch_among_rows_that_are_printed_twice_is_said_at_both_places() => Assert.Equal(
        ["Rows 1–3, 4 times: chart rows 1–3; before rows 1 and 4 twining, twice across from the right, with its own yarn; after rows 3 and 6 twining, twice across from the right, with its own yarn"],
        Lines(Charts.Document("xx./.xx/x.x", steps: [new Repeat(4, [Own, new ChartRows(1, 3, 1), Own])])));

    [Fact]
    public void A_stitch_that_turns_round_among_others_is_said_for_each_time() => Assert.Equal(
        [
            "Rows 1–3, twice: chart rows 1–2 with weft 1, then chart row 1 with weft 1; after row 2 twining, once across from the left, with weft 2; after rows 3 and 6 twining, twice across from the right, with its own yarn; "
            + "after row 5 twining, once across from the right, with weft 2",
        ],
        Lines(TwoWefts(new Repeat(2, [new ChartRows(1, 2, 1), Working with { Weft = 2 }, new ChartRows(1, 1, 1), Own]))));

    [Fact]
    public void Every_stitch_of_the_printed_rows_is_said_where_it_is_worked_and_from_its_side() =>
        Law.OfDocuments(document => AssertStitchesSaid(Piece.Of(document), Words));

    [Fact]
    public void A_stitch_that_is_not_said_would_be_seen()
    {
        var piece = Piece.Of(Charts.Document("xx./.xx/x.x", steps: [new Repeat(2, [new ChartRows(1, 3, 1), Own])]));
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertStitchesSaid(piece, new Forgetful()));
    }

    [Fact]
    public void The_whole_text_of_a_small_piece()
    {
        var document = Charts.Document("xx./.xx/x.x", repeats: 2, floating: Charts.AlikeUnder, steps: [new Repeat(2, [new ChartRows(1, 3, 1)]), new PlainRows(1, 1)]);
        Assert.Equal(
            """
            Test cloth

            Warp: 2 × 3 = 6, + 2 floating selvedges = 8 ends (a multiple of 3, plus 2 floating selvedges)
            4 ends per inch; width on the loom 2 in (5.1 cm)
            2 × 3 + 1 closing row = 7 rows; 5 rows per inch; woven length 1.4 in (3.6 cm)
            Floating selvedges (F): go under both in the first row, over both in the next, and so on in turn.
            Row 1, at the bottom of the chart, starts at the left.

            Order of work
            - Rows 1–3, twice: chart rows 1–3
              There are 3 repeated rows, an odd number, so every other time starts from the other side: rows 1–3 are for time 1, rows 4–6 for time 2.
            - Closing row 7, once: 1 plain row

            Rows
            Row 1 from the left →: [under 1, over 2] × 2, under 2
            Row 2 ← from the right: over 3, under 1, over 2, under 1, over 1
            Row 3 from the left →: under 1, over 1, under 1, over 2, under 1, over 1, under 1
            Row 4 (chart row 1) ← from the right: over 1, under 1, over 2, under 1, over 3
            Row 5 (chart row 2) from the left →: under 2, [over 2, under 1] × 2
            Row 6 (chart row 3) ← from the right: [over 2, under 1] × 2, over 2
            Row 7 (plain) from the left →: [under 1, over 1] × 3, under 2

            """.ReplaceLineEndings("\n"),
            WrittenDirections.Text(Piece.Of(document), Words));
    }

    private static PatternDocument TwoWefts(RowStep step) => Charts.Document("xx./.xx") with
    {
        Rows = new RowPlan([new Weft(Side.Left), new Weft(Side.Left)], Stroke.Under, [step]),
    };

    private static void AssertStitchesSaid(Piece piece, Wording words)
    {
        foreach (var again in Schedule.Of(piece).OfType<RowsAgain>())
        {
            var worked = again.Stitches.Select(stitch => Place(again.Band, stitch) + " " + words.StitchText(piece, stitch).Replace(LeaveAlone, "", StringComparison.Ordinal));
            var said = words.ScheduleText(piece, again).Replace(LeaveAlone, "", StringComparison.Ordinal).Split("; ").Skip(1).SelectMany(Apart);
            Assert.Equal(worked.Order(StringComparer.Ordinal), said.Order(StringComparer.Ordinal));
        }
    }

    private static string Place(Band band, WovenStitch stitch) => band.FirstRowOf(stitch.Time!.Value) == stitch.AfterRow + 1
        ? $"before row {Words.Number(stitch.AfterRow + 1)}"
        : $"after row {Words.Number(stitch.AfterRow)}";

    // "after rows 3 and 6 twining …" is said of two places
    private static IEnumerable<string> Apart(string said)
    {
        var parts = TwoPlaces().Match(said).Groups;
        return parts[0].Success
            ? [$"{parts["when"]} row {parts["first"]} {parts["what"]}", $"{parts["when"]} row {parts["second"]} {parts["what"]}"]
            : [said];
    }

    [GeneratedRegex("^(?<when>before|after) rows (?<first>[0-9,]+) and (?<second>[0-9,]+) (?<what>.*)$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TwoPlaces();

    private sealed class Forgetful() : Wording("en")
    {
        public override string Number(int value) => value == 6 ? "5" : base.Number(value);
    }

    private static IEnumerable<string> Lines(PatternDocument document)
    {
        var piece = Piece.Of(document);
        return Schedule.Of(piece).Select(line => Words.ScheduleText(piece, line));
    }

    private static string TwoReadings(PatternDocument document)
    {
        var piece = Piece.Of(document);
        return Words.TwoReadingsText(piece, piece.Bands[0]);
    }
}
