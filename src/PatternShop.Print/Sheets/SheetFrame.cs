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
    /// <param name="apart">Whether what comes after the rows begins a page of its own.</param>
    public Sequence<PagePlan> Pages(Rhythm rhythm, bool apart)
    {
        var chart = new ChartSheets(Piece, rhythm, Wording);
        var closing = new Stack([.. ClosingBlocks.Of(Piece, Version, rhythm, Wording), .. ShaftsBlock.Of(Piece, rhythm, Wording)]);
        var all = new Stack([.. Before(rhythm), new Stacked(rhythm.Section, BeginBlock.Of(Piece, rhythm, Wording, chart)), .. After(rhythm), new Stacked(rhythm.Section, apart ? new OnNewPage(closing) : closing)]);
        return Pages(all);
    }

    /// <summary>The pages of anything, with their feet.</summary>
    public Sequence<PagePlan> Pages(Block body) => PagePlanner.Plan(Paper, _margins, body, (page, of) => [.. TestMarks(), .. _footer.Marks(page, of)]);

    /// <summary>The height of everything that belongs on the first page of a small piece beside the chart.</summary>
    public double HeightWithoutChart(Rhythm rhythm) =>
        new Stack([.. Before(rhythm), new Stacked(rhythm.Section, BeginBlock.Of(Piece, rhythm, Wording, null)), .. After(rhythm)])
            .Fit(Room.Width, double.PositiveInfinity, true).Height;

    private IEnumerable<Stacked> Before(Rhythm rhythm) => TitleBlock.Of(Piece, Version, rhythm, Wording);

    private IEnumerable<Stacked> After(Rhythm rhythm) =>
    [
        new Stacked(rhythm.Section, new Whole(new Headed(Headings.Section(Wording.ScheduleTitle, rhythm), 1, ScheduleBlock.Of(Piece, rhythm, Wording)))),
        new Stacked(rhythm.Section, new Headed(Headings.Section(Wording.RowsTitle, rhythm), 1, RowsBlock.Whole(Piece, rhythm, Wording))),
    ];

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
