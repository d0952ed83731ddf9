using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Where order of work and written rows stand.</summary>
internal enum RowsPlace
{
    /// <summary>Under the chart, over the whole width.</summary>
    Under,

    /// <summary>Under the chart, in two columns.</summary>
    InColumns,

    /// <summary>At the right of the chart.</summary>
    AtTheRight,

    /// <summary>The order of work at the right of the chart, the rows under both in two columns.</summary>
    WorkAtTheRight,

    /// <summary>At the right of the chart, in two columns.</summary>
    ColumnsAtTheRight,
}

/// <summary>How things are set: the air between them in millimetres, the lettering, the place of the written rows, the cells.</summary>
/// <param name="Section">Above a section.</param>
/// <param name="Part">Above a part of a section.</param>
/// <param name="Padding">Above and below what stands in a row of a table.</param>
/// <param name="Styles">The lettering.</param>
/// <param name="Place">Where order of work and written rows stand.</param>
/// <param name="Cells">The sizes between which cells are chosen.</param>
/// <param name="Look">The lettering and the ink of the chart.</param>
internal sealed record Rhythm(double Section, double Part, double Padding, Styles Styles, RowsPlace Place, CellSizes Cells, ChartLook Look)
{
    /// <summary>Between two columns, in millimetres.</summary>
    public const double ColumnGap = 6;

    /// <summary>The leading and the padding of rows where there is the least room.</summary>
    public const double ShortLeading = 1.14;

    /// <inheritdoc cref="ShortLeading"/>
    public const double ShortPadding = 0.1;

    private const double PointsPerMillimetre = 72 / 25.4;
    private const double LargeText = 18 / PointsPerMillimetre;

    /// <summary>The room for the picture of the cloth; null where there is none.</summary>
    public ClothRoom? Cloth { get; init; } = ClothIn(40, 46);

    /// <summary>Whether a heading and the words that belong to it share a line.</summary>
    public bool SharesLines { get; init; }

    /// <summary>Whether rows are written in the short form: a letter for over and for under.</summary>
    public bool InShort { get; init; }

    /// <summary>Whether rows take many lines: side under number, so that lines are longer.</summary>
    public bool HasLongRows { get; init; }

    /// <summary>Whether something stands at the right of the chart.</summary>
    public bool HasSide => Place is RowsPlace.AtTheRight or RowsPlace.WorkAtTheRight or RowsPlace.ColumnsAtTheRight;

    /// <summary>The least width of what stands at the right of the chart: less would be a word a line.</summary>
    public double LeastSide => (Place, InShort) switch
    {
        (RowsPlace.WorkAtTheRight, _) => 52,
        (RowsPlace.ColumnsAtTheRight, false) => (2 * 58) + ColumnGap,
        (RowsPlace.ColumnsAtTheRight, true) => (2 * 46) + ColumnGap,
        (_, true) => 50,
        _ => 68,
    };

    /// <summary>The width of the chart where something stands at its right; 0 while it is not known.</summary>
    public double ChartWidth { get; init; }

    private static ChartLook StandardLook { get; } = ChartLook.Usual with { NarrowBrackets = true, LegendPerEnd = CellSizes.Standard.Least };

    private static ChartLook LargeLook { get; } = new(Ink.Full, LargeText, 1, LargeText, LargeText, LargeText, true) { LegendPerEnd = CellSizes.Large.Least };

    private static Rhythm Airy { get; } = new(7, 5, 1, Styles.Standard, RowsPlace.Under, CellSizes.Standard, StandardLook);

    private static Rhythm Close { get; } = Airy with { Section = 4.5, Part = 3, Padding = 0.5 };

    private static Rhythm Tight { get; } = Airy with { Section = 3, Part = 2, Padding = 0.3, Styles = Styles.Small, Cloth = ClothIn(36, 38) };

    private static Rhythm Tightest { get; } = Airy with { Section = 2.2, Part = 1.2, Padding = 0.2, Styles = Styles.Smallest, Cloth = ClothIn(30, 30), SharesLines = true, Look = StandardLook with { ShortLegend = true } };

    /// <summary>The ways to try for a page that holds everything, the most generous first.</summary>
    public static Sequence<Rhythm> ForOnePage(PrintSetting setting) => setting == PrintSetting.LargePrint
        ? [For(setting, Airy), For(setting, Close), For(setting, Close with { Place = RowsPlace.AtTheRight })]
        : new Rhythm[]
        {
            Airy,
            Close,
            Close with { Place = RowsPlace.AtTheRight },
            Close with { Styles = Styles.Narrow },
            Close with { Styles = Styles.Narrow, Place = RowsPlace.AtTheRight },
            Close with { Styles = Styles.Narrow, Place = RowsPlace.InColumns },
            Tight,
            Tight with { Place = RowsPlace.AtTheRight },
            Tight with { Place = RowsPlace.InColumns },
        }.Select(rhythm => For(setting, rhythm)).ToSequence();

    /// <summary>The ways to try before a page is given up.</summary>
    public static Sequence<Rhythm> AtTheFloor(PrintSetting setting) => setting == PrintSetting.LargePrint
        ? []
        : InEveryPlace(setting, Tightest);

    /// <summary>The ways to try last, the larger letters first: rows in the short form.</summary>
    public static Sequence<Sequence<Rhythm>> InTheShortForm(PrintSetting setting) => setting == PrintSetting.LargePrint
        ? []
        : new[] { Styles.Small, Styles.Smallest }
            .Select(rows => Tightest with { InShort = true, Section = 1.6, Part = 0.8, Padding = ShortPadding, Styles = Styles.InShort with { Directions = rows.Directions with { Leading = ShortLeading }, RowNumber = rows.RowNumber with { Leading = ShortLeading } } })
            .Select(way => InEveryPlace(setting, way))
            .ToSequence();

    /// <summary>The ways to set what flows over several pages, the most generous first.</summary>
    public static Sequence<Rhythm> Flowing(PrintSetting setting) =>
        [For(setting, Airy), For(setting, Close), For(setting, Close with { Cells = CellSizes.Standard with { Most = CellSizes.Standard.Good } })];

    /// <summary>The ways to set what comes after a page that holds everything, the most generous first.</summary>
    public static Sequence<Rhythm> AfterOnePage(PrintSetting setting) =>
        [For(setting, Airy), For(setting, Close), .. setting == PrintSetting.LargePrint ? [] : new[] { For(setting, Close with { Styles = Styles.Narrow, Padding = 0.3 }) }];

    /// <summary>The same for rows that take many lines each.</summary>
    public Rhythm ForLongRows(bool veryLong) => WithRows(veryLong ? Styles.Smallest : Styles.Small) with { Place = RowsPlace.InColumns, HasLongRows = true };

    /// <summary>The same for rows that are very many.</summary>
    public Rhythm ForManyRows() => WithRows(Styles.Small);

    /// <summary>The width of the written rows where a page leaves so much.</summary>
    public double RowsWidth(double width) => Place switch
    {
        RowsPlace.InColumns or RowsPlace.WorkAtTheRight => (width - ColumnGap) / 2,
        RowsPlace.ColumnsAtTheRight => (width - (2 * ColumnGap) - ChartWidth) / 2,
        RowsPlace.AtTheRight => width - ColumnGap - ChartWidth,
        _ => width,
    };

    private static Sequence<Rhythm> InEveryPlace(PrintSetting setting, Rhythm way) =>
        new[] { RowsPlace.Under, RowsPlace.AtTheRight, RowsPlace.InColumns, RowsPlace.WorkAtTheRight, RowsPlace.ColumnsAtTheRight }
            .Select(place => For(setting, way with { Place = place })).ToSequence();

    private Rhythm WithRows(Styles rows) => this with { Padding = 0.5, Part = 3, Styles = Styles with { Directions = rows.Directions, RowNumber = rows.RowNumber } };

    // thinner threads could not be told apart on paper
    private static ClothRoom ClothIn(double width, double height) => new(width, height, Thinnest: 0.5, Thickest: 2.2);

    private static Rhythm For(PrintSetting setting, Rhythm rhythm) =>
        setting == PrintSetting.LargePrint
            ? rhythm with { Styles = Styles.Large, Cells = CellSizes.Large, Look = LargeLook }
            : setting == PrintSetting.InkSaving ? rhythm with { Look = rhythm.Look with { Ink = Ink.Sparing }, Cloth = null } : rhythm;
}

/// <summary>Sides of cells in millimetres.</summary>
/// <param name="Least">No cell is smaller, or the chart is cut.</param>
/// <param name="Good">Cells are at least this large where they fit.</param>
/// <param name="Most">No cell is larger.</param>
internal sealed record CellSizes(double Least, double Good, double Most)
{
    public static CellSizes Standard { get; } = new(4, 6, 8);

    public static CellSizes Large { get; } = new(6.35, 8, 10);
}
