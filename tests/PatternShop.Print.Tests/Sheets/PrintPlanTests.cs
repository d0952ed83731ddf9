using PatternShop.Tests.Shared;
using PatternShop.Weave;
using CsCheck;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>The pages as data; no PDF is made here.</summary>
public sealed class PrintPlanTests
{
    private const double Edge = 9;

    public static TheoryData<string> SampleNames { get; } = new(Samples.Names);

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void A_sample_stays_on_its_paper(string name)
    {
        AssertOnPaper(Plan(Samples.All[name], Paper.A4));
        AssertOnPaper(Plan(Samples.All[name], Paper.Letter));
    }

    [Fact]
    public void Generated_pieces_stay_on_their_paper() => DocumentGen.Documents.Sample(
        document => AssertOnPaper(Plan(document, Paper.A4)),
        iter: Effort.Of(100, 5_000));

    [Fact]
    public void Large_generated_pieces_stay_on_their_paper() => DocumentGen.Of(60, 70).Sample(
        document => AssertOnPaper(Plan(document, Paper.Letter)),
        iter: Effort.Of(10, 200));

    /// <summary>Found by the long run: the chart of this piece once stood a millimetre and a half beyond the edge of the print.</summary>
    [Fact]
    public void A_chart_whose_legend_and_labels_are_wide_stays_on_its_paper() => AssertOnPaper(Plan(
        Samples.Diamond with
        {
            Motif = GridText.Read("xxxxxx.....", "xxxxx.....x", "xxxx.....xx", "xxx.....xxx", "xx.....xxxx", "x.....xxxxx", ".....xxxxxx", "....xxxxxx.", "...xxxxxx..", "..xxxxxx..."),
            Width = new WidthPlan(2, 9, 13, new FloatingSelvedges(EdgeWay.Entering, Stroke.Under)),
            Rows = new RowPlan([new Weft(Side.Left), new Weft(Side.Right), new Weft(Side.Right)], Stroke.Over,
            [
                new Repeat(3, [new PlainRows(3, 2), new PlainRows(3, 1)]),
                new Repeat(4, [new ChartRows(5, 1, 1), new ChartRows(9, 3, 1), new ChartRows(4, 2, 2)]),
                new Repeat(2, [new ChartRows(3, 2, 2), new EdgeStitch("twining", StitchYarn.Own, 4, Side.Right, 1)]),
                new Repeat(4, [new ChartRows(9, 5, 3)]),
            ]),
        },
        Paper.A4));

    [Fact]
    public void A_mark_off_the_paper_would_be_seen() => Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertOnPaper(
        new PrintPlan(Paper.A4, new FileFacts("", "en", "", "", ""), [new PagePlan([.. TextLine.Set("over the edge", 190, 20, new TextStyle(12), null)])])));

    [Fact]
    public void The_parts_of_a_cut_chart_are_the_whole_chart_once()
    {
        var piece = Piece.Of(Samples.Large);
        var parts = ChartParts.Of(piece, 4.5, new Room(180, 250), Wording.English, ChartLook.Usual);
        Assert.True(parts.Count > 1);
        Assert.All(parts, part => Assert.Equal(part.Column == part.Columns - 1 ? 0 : ChartParts.Overlap, part.Window.Columns - part.OwnColumns));
        Assert.All(parts, part => Assert.Equal(part.Row == part.Rows - 1 ? 0 : ChartParts.Overlap, part.Window.Rows - part.OwnRows));
        var seen = parts.SelectMany(part => Enumerable.Range(part.Window.FirstRow, part.OwnRows)
            .SelectMany(row => Enumerable.Range(part.Window.FirstColumn, part.OwnColumns).Select(column => (row, column)))).ToList();
        Assert.Equal(piece.Rows.Count * piece.Ends, seen.Count);
        Assert.Equal(seen.Count, seen.Distinct().Count());
    }

    [Fact]
    public void Every_time_through_has_a_box()
    {
        var document = Samples.Diamond with
        {
            Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new Repeat(75, [new ChartRows(1, 10, 1)]), new PlainRows(2, 1)]),
        };
        var boxes = Plan(document, Paper.A4).Pages
            .SelectMany(page => page.Items)
            .Where(item => item.Tag is { ActualText: { } text } && text.Contains("tick", StringComparison.Ordinal))
            .Select(item => item.Mark)
            .OfType<StrokeMark>()
            .Sum(mark => mark.Lines.Count);
        Assert.Equal(75 + 1, boxes);
    }

    [Fact]
    public void The_version_line_says_number_and_day_or_that_nothing_is_issued()
    {
        Assert.Contains("not issued", VersionLine.NotIssued.Text(Wording.English), StringComparison.Ordinal);
        Assert.Equal("Version 3, 5 November 2026", new VersionLine(3, new DateOnly(2026, 11, 5)).Text(Wording.English));
    }

    private static PrintPlan Plan(PatternDocument document, Paper paper) =>
        Printable.Plan(Piece.Of(document), VersionLine.NotIssued, paper, Wording.English);

    // Printers leave a few millimetres of any paper empty.
    private static void AssertOnPaper(PrintPlan plan) => Assert.All(plan.Pages.SelectMany(page => page.Items), item =>
    {
        var (left, top, right, bottom) = item.Mark.Extent;
        Assert.InRange(item.Mark.X + left, Edge, plan.Paper.Width - Edge);
        Assert.InRange(item.Mark.X + right, Edge, plan.Paper.Width - Edge);
        Assert.InRange(item.Mark.Y + top, Edge, plan.Paper.Height - Edge);
        Assert.InRange(item.Mark.Y + bottom, Edge, plan.Paper.Height - Edge);
    });
}
