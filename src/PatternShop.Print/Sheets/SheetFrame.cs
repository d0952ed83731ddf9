using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>What is printed, on what, and how it becomes pages.</summary>
internal sealed class SheetFrame
{
    private const double Top = 12;
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
        Sequence<Stacked> begin = rhythm.Place == RowsPlace.AtTheRight
            ? [new Stacked(rhythm.Section, BeginBlock.Of(Piece, rhythm, Wording, new Beside(chart, rhythm.ChartWidth, Rhythm.ColumnGap, Work(rhythm, rhythm.RowsWidth(Room.Width)))))]
            : [new Stacked(rhythm.Section, BeginBlock.Of(Piece, rhythm, Wording, chart)), .. UnderChart(rhythm)];
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

    /// <summary>The height of order of work and rows in a column of a width.</summary>
    public double HeightOfRows(Rhythm rhythm, double width) => Work(rhythm, width).Fit(width, double.PositiveInfinity, true).Height;

    private double HeightOf(Sequence<Stacked> parts) => new Stack(parts).Fit(Room.Width, double.PositiveInfinity, true).Height;

    private IEnumerable<Stacked> Before(Rhythm rhythm) => TitleBlock.Of(Piece, Version, rhythm, Wording);

    private Stacked Begin(Rhythm rhythm) => new(rhythm.Section, BeginBlock.Of(Piece, rhythm, Wording, null));

    private IEnumerable<Stacked> UnderChart(Rhythm rhythm) => rhythm switch
    {
        { HasLongRows: true } => [OrderOfWork(rhythm, Room.Width), Rows(rhythm, new TwoColumns(RowsBlock.Whole(Piece, rhythm, Wording), Rhythm.ColumnGap))],
        { Place: RowsPlace.InColumns } => [new Stacked(rhythm.Section, new TwoColumns(Work(rhythm, rhythm.RowsWidth(Room.Width)), Rhythm.ColumnGap))],
        _ => Work(rhythm, Room.Width).Parts,
    };

    private Stack Work(Rhythm rhythm, double width) => new([OrderOfWork(rhythm, width), Rows(rhythm, RowsBlock.Whole(Piece, rhythm, Wording))]);

    private Stacked OrderOfWork(Rhythm rhythm, double width) => new(rhythm.Section, new Whole(ScheduleBlock.Of(Piece, rhythm, Wording, width)));

    private Stacked Rows(Rhythm rhythm, Block rows) => new(rhythm.Section, new Headed(Headings.Section(Wording.RowsTitle, rhythm), 1, rows));

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
            new Placed(new StrokeMark(Footer.Side, Top - 4, [[new Spot(0, 0), new Spot(width + 4, 0), new Spot(width + 4, TestBand), new Spot(0, TestBand)]], true, 0.5, 0), null),
            .. TextLine.Set(Wording.TestPrintText, Footer.Side + 2, Top - 4 + (TestBand / 2) + (0.35 * style.Em), style, null),
        ];
    }
}
