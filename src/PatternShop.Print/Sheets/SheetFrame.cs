using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>What is printed, on what, and how it becomes pages.</summary>
internal sealed class SheetFrame
{
    private const double Top = 10;
    private const double TestBand = 8;

    private readonly Footer _footer;
    private readonly Margins _margins;

    public SheetFrame(Piece piece, VersionLine version, Paper paper, Wording wording, PrintSetting setting)
    {
        (Piece, Version, Paper, Wording, Setting) = (piece, version, paper, wording, setting);
        _footer = new Footer(piece.Document.Title, version, paper, Rhythm.Flowing(setting)[0].Styles.Footer, wording);
        _margins = new Margins(Footer.Side, Top + (version.IsTest ? TestBand : 0), Footer.Side, _footer.Height);
    }

    public Piece Piece { get; }

    public VersionLine Version { get; }

    public Paper Paper { get; }

    public Wording Wording { get; }

    public PrintSetting Setting { get; }

    /// <summary>The room that a page leaves for what it says.</summary>
    public Room Room => new(Paper.Width - _margins.Left - _margins.Right, Paper.Height - _margins.Top - _margins.Bottom);

    /// <summary>The pages in a rhythm.</summary>
    /// <param name="rhythm">How things are set.</param>
    /// <param name="after">How that is set which comes after the rows.</param>
    /// <param name="apart">Whether what comes after the rows begins a page of its own.</param>
    public Sequence<PagePlan> Pages(Rhythm rhythm, Rhythm after, bool apart)
    {
        var chart = new ChartSheets(Piece, rhythm, Wording, Room.Height);
        var closing = Closing(after);
        Block first = rhythm.HasSide ? new Beside(chart, rhythm.ChartWidth, Rhythm.ColumnGap, Side(rhythm, Room.Width - Rhythm.ColumnGap - rhythm.ChartWidth)) : chart;
        Sequence<Stacked> begin = [new Stacked(rhythm.Section, BeginBlock.Of(Piece, rhythm, Wording, first)), .. UnderChart(rhythm)];
        return Pages(new Stack([.. Before(rhythm), .. begin, new Stacked(after.Section, apart ? new OnNewPage(closing) : closing)]));
    }

    /// <summary>What comes after the rows.</summary>
    public Stack Closing(Rhythm rhythm) => new([.. ClosingBlocks.Of(Piece, Version, rhythm, Wording), .. ShaftsBlock.Of(Piece, rhythm, Wording, Room.Width)]);

    /// <summary>The pages of anything, with their feet.</summary>
    public Sequence<PagePlan> Pages(Block body) => PagePlanner.Plan(Paper, _margins, body, (page, of) => [.. TestMarks(), .. _footer.Marks(page, of)]);

    /// <summary>How much of its height a page uses, from 0 to 1.</summary>
    public double Used(PagePlan page) =>
        (page.Items.Where(item => item.Tag is not null).Select(item => item.Mark.Y + item.Mark.Extent.Bottom).DefaultIfEmpty(_margins.Top).Max() - _margins.Top) / Room.Height;

    /// <summary>The height of everything that belongs on the first page of a small piece above and below the chart.</summary>
    public double HeightWithoutChart(Rhythm rhythm) => HeightOf([.. Before(rhythm), Begin(rhythm), .. UnderChart(rhythm)]);

    /// <summary>The height of what stands above the chart.</summary>
    public double HeightAboveChart(Rhythm rhythm) => HeightOf([.. Before(rhythm), Begin(rhythm)]);

    /// <summary>The height of what stands at the right of the chart, in a width.</summary>
    public double HeightOfSide(Rhythm rhythm, double width) => Side(rhythm, width).Fit(width, double.PositiveInfinity, true).Height;

    /// <summary>The height of what stands under the chart and its side, with the space above it.</summary>
    public double HeightUnderSide(Rhythm rhythm) => rhythm.Place == RowsPlace.WorkAtTheRight ? rhythm.Section + HeightOf([.. UnderChart(rhythm)]) : 0;

    private double HeightOf(Sequence<Stacked> parts) => new Stack(parts).Fit(Room.Width, double.PositiveInfinity, true).Height;

    private IEnumerable<Stacked> Before(Rhythm rhythm) => TitleBlock.Of(Piece, Version, rhythm, Wording);

    private Stacked Begin(Rhythm rhythm) => new(rhythm.Section, BeginBlock.Of(Piece, rhythm, Wording, null));

    private Block Side(Rhythm rhythm, double width) => rhythm.Place switch
    {
        RowsPlace.WorkAtTheRight => OrderOfWork(rhythm, width).Block,
        RowsPlace.ColumnsAtTheRight => new TwoColumns(Work(rhythm, (width - Rhythm.ColumnGap) / 2), Rhythm.ColumnGap),
        _ => Work(rhythm, width),
    };

    private IEnumerable<Stacked> UnderChart(Rhythm rhythm) => rhythm switch
    {
        { Place: RowsPlace.AtTheRight or RowsPlace.ColumnsAtTheRight } => [],
        { Place: RowsPlace.WorkAtTheRight } => [Rows(rhythm, new TwoColumns(RowsBlock.Whole(Piece, rhythm, Wording), Rhythm.ColumnGap))],
        { HasLongRows: true } => [OrderOfWork(rhythm, Room.Width), Rows(rhythm, new TwoColumns(RowsBlock.Whole(Piece, rhythm, Wording), Rhythm.ColumnGap))],
        { Place: RowsPlace.InColumns } => [new Stacked(rhythm.Section, new TwoColumns(Work(rhythm, rhythm.RowsWidth(Room.Width)), Rhythm.ColumnGap))],
        _ => Work(rhythm, Room.Width).Parts,
    };

    private Stack Work(Rhythm rhythm, double width) => new([OrderOfWork(rhythm, width), Rows(rhythm, RowsBlock.Whole(Piece, rhythm, Wording))]);

    private Stacked OrderOfWork(Rhythm rhythm, double width) => new(rhythm.Section, new Whole(ScheduleBlock.Of(Piece, rhythm, Wording, width)));

    private Stacked Rows(Rhythm rhythm, Block rows)
    {
        var heading = Headings.Section(Wording.RowsTitle, rhythm);
        return new Stacked(rhythm.Section, new Headed(rhythm.InShort ? new Followed(heading, new Words(Wording.ShortLegend, rhythm.Styles.Strong, new Tag(TagKind.Paragraph))) : heading, 1, rows));
    }

    private IEnumerable<Placed> TestMarks()
    {
        if (!Version.IsTest)
        {
            return [];
        }

        var style = new TextStyle(Math.Max(12, Rhythm.Flowing(Setting)[0].Styles.Footer.Points), true);
        var width = Lettering.Width(Wording.TestPrintText, style);
        return
        [
            new Placed(new StrokeMark(Footer.Side, Top - 3, [[new Spot(0, 0), new Spot(width + 4, 0), new Spot(width + 4, TestBand), new Spot(0, TestBand)]], true, 0.5, 0), null),
            .. TextLine.Set(Wording.TestPrintText, Footer.Side + 2, Top - 3 + (TestBand / 2) + (0.35 * style.Em), style, null),
        ];
    }
}
