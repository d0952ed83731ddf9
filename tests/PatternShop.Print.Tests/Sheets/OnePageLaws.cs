using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>
/// A small piece, up to 40 ends by 24 written rows, is one page wherever letters of 10 points and cells of 4 mm leave room for it. The maker's own words
/// for single rows come on top and are left out here.
/// </summary>
public sealed class OnePageLaws
{
    private const int MostEnds = 40;
    private const int MostRows = 24;
    private const double LeastCell = 4;
    private const double Floor = 10;

    // A line of the smallest rows, and the width of such a line in one of two columns; a few millimetres less than the sheets use.
    private const double Line = 4.2;
    private const double Column = 62;

    // So much of a page is left for cells and rows beside title, counts, order of work, headings and foot.
    private const double AlwaysFits = 0.35;

    private static readonly VersionLine Version = new(1, new DateOnly(2026, 11, 24)) { Maker = "Studio at the mill" };

    [Fact]
    public void Pieces_whose_cells_and_rows_leave_room_are_one_page()
    {
        var (fitting, all) = (0, 0);
        Small.SampleFixed(
            document =>
            {
                foreach (var paper in new[] { Paper.A4, Paper.Letter })
                {
                    var frame = FrameOf(document, paper);
                    var fits = OnePage.Find(frame) is not null;
                    Interlocked.Increment(ref all);
                    Interlocked.Add(ref fitting, fits ? 1 : 0);
                    Assert.True(fits || Share(frame) > AlwaysFits || Schedule.Of(frame.Piece).Count > 6, $"{Share(frame)}");
                    Assert.True(fits || NothingFitsAtTheFloor(frame), "A way to fit it was overlooked.");
                }
            },
            Effort.Of(120, 3_000));
        // 98.9 % on A4 and 97.5 % on Letter of a thousand
        Assert.True(fitting >= 0.97 * all, $"{fitting} of {all}");
    }

    /// <summary>Whatever is found stays on one page as it is painted, with letters and cells no smaller than the floor.</summary>
    [Fact]
    public void What_fits_is_set_on_the_first_page_and_no_smaller_than_the_floor()
    {
        var (fitting, all) = (0, Effort.Of(25, 1_000));
        Small.SampleFixed(
            document =>
            {
                var frame = FrameOf(document, Paper.A4);
                if (OnePage.Find(frame) is not { } rhythm)
                {
                    return;
                }

                Interlocked.Increment(ref fitting);
                var pages = Printable.Set(frame).Pages;
                var charts = pages.Select(page => page.Items.Select(item => item.Tag?.Chart).OfType<ChartLayout>().Distinct().ToList()).ToList();
                Assert.Equal(frame.Piece.PrintedRows().Count(), Assert.Single(charts[0]).Window.Rows);
                Assert.True(charts[0][0].Cell >= LeastCell - 1e-6);
                Assert.All(charts.Skip(1), Assert.Empty);
                Assert.True(rhythm.Styles.Directions.Points >= Floor);
                var rows = pages.Select(page => page.Items.Select(item => item.Tag?.Path.FirstOrDefault(tag => tag.Kind == TagKind.HeaderCell && tag.Scope == HeaderScope.Row)).Distinct().Count()).ToList();
                Assert.True(rows[0] >= frame.Piece.PrintedRows().Count());
                Assert.All(pages[0].Items.Where(item => item.Mark is TextMark), item => Assert.True(item.Mark.Y <= Paper.A4.Height));
            },
            all);
        Assert.True(fitting >= 0.9 * all, $"{fitting} of {all}");
    }

    /// <summary>Two columns that hold rows in some height hold them in more, wherever the left one ends then.</summary>
    [Fact]
    public void More_height_holds_no_less() => Gen.Select(Small, Gen.Double[0, 15]).Sample(
        (document, more) =>
        {
            var frame = FrameOf(document, Paper.A4);
            var rhythm = Rhythm.InTheShortForm(PrintSetting.Standard)[0].First(way => way.Place == RowsPlace.InColumns);
            var columns = new TwoColumns(RowsBlock.Whole(frame.Piece, rhythm, Wording.English), Rhythm.ColumnGap);
            var height = columns.Fit(frame.Room.Width, double.PositiveInfinity, true).Height;
            Assert.Null(columns.Fit(frame.Room.Width, height + more, true).Rest);
        },
        iter: Effort.Of(300, 10_000));

    private static Gen<PatternDocument> Small { get; } = DocumentGen.Of(MostRows, MostEnds)
        .Where(document => Piece.Of(document) is var piece && piece.Ends <= MostEnds && piece.PrintedRows().Count() <= MostRows)
        .Select(document => document with { Title = "Tide table", RowWords = [], Videos = [] });

    private static SheetFrame FrameOf(PatternDocument document, Paper paper) => new(Piece.Of(document), Version, paper, Wording.English, PrintSetting.Standard);

    // Rows in two columns, so half a line each.
    private static double Share(SheetFrame frame)
    {
        var style = new TextStyle(Floor);
        var text = frame.Piece.PrintedRows().Sum(number => Math.Ceiling(Lettering.Width(Wording.English.WritingText(frame.Piece.Reading(number).Writing), style) / Column)) * Line / 2;
        return ((frame.Piece.PrintedRows().Count() * LeastCell) + text) / frame.Room.Height;
    }

    // Whatever stands where: cells of 4 mm, letters of 10 points.
    private static bool NothingFitsAtTheFloor(SheetFrame frame) => Rhythm.InTheShortForm(PrintSetting.Standard)[^1].Select(way => Adapted.WithBracketsFor(frame, way)).All(way =>
    {
        var chart = new ChartLayout(frame.Piece, ChartWindow.Whole(frame.Piece), LeastCell, true, Wording.English, way.Look);
        var side = frame.Room.Width - chart.Width - Rhythm.ColumnGap;
        return way.HasSide
            ? side < way.LeastSide || frame.HeightAboveChart(way) + frame.HeightUnderSide(way) + Math.Max(chart.Height, frame.HeightOfSide(way, side)) > frame.Room.Height - 0.1
            : chart.Width > frame.Room.Width || frame.HeightWithoutChart(way) + chart.Height > frame.Room.Height - 0.1;
    });
}
