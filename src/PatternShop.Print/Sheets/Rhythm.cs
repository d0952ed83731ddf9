using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>How things are set: the air between them in millimetres, the lettering, the columns of the written rows, the cells.</summary>
/// <param name="Section">Above a section.</param>
/// <param name="Part">Above a part of a section.</param>
/// <param name="Padding">Above and below what stands in a row of a table.</param>
/// <param name="Styles">The lettering.</param>
/// <param name="RowColumns">Columns of written rows, 1 or 2.</param>
/// <param name="Cells">The sizes between which cells are chosen.</param>
/// <param name="Look">The lettering and the ink of the chart.</param>
/// <param name="ShowsCloth">Whether there is a picture of the cloth.</param>
internal sealed record Rhythm(double Section, double Part, double Padding, Styles Styles, int RowColumns, CellSizes Cells, ChartLook Look, bool ShowsCloth)
{
    private const double PointsPerMillimetre = 72 / 25.4;
    private const double LargeText = 18 / PointsPerMillimetre;

    private static ChartLook StandardLook { get; } = ChartLook.Usual with { NarrowBrackets = true };

    private static ChartLook LargeLook { get; } = new(Ink.Full, LargeText, 1, LargeText, LargeText, LargeText, true);

    private static Rhythm Airy { get; } = new(7, 5, 1, Styles.Standard, 1, CellSizes.Standard, StandardLook, true);

    private static Rhythm Close { get; } = Airy with { Section = 4.5, Part = 3, Padding = 0.5 };

    private static Rhythm Tight { get; } = Airy with { Section = 3, Part = 2, Padding = 0.3, Styles = Styles.Small };

    /// <summary>The ways to try for a page that holds everything, the most generous first.</summary>
    public static Sequence<Rhythm> ForOnePage(PrintSetting setting) => setting == PrintSetting.LargePrint
        ? [For(setting, Airy), For(setting, Close)]
        : new Rhythm[]
        {
            Airy,
            Close,
            Close with { Styles = Styles.Narrow },
            Close with { Styles = Styles.Narrow, RowColumns = 2 },
            Tight,
            Tight with { RowColumns = 2 },
        }.Select(rhythm => For(setting, rhythm)).ToSequence();

    /// <summary>The ways to set what flows over several pages, the most generous first.</summary>
    public static Sequence<Rhythm> Flowing(PrintSetting setting) =>
        [For(setting, Airy), For(setting, Close), For(setting, Close with { Cells = CellSizes.Standard with { Most = CellSizes.Standard.Good } })];

    private static Rhythm For(PrintSetting setting, Rhythm rhythm) =>
        setting == PrintSetting.LargePrint
            ? rhythm with { Styles = Styles.Large, Cells = CellSizes.Large, Look = LargeLook, RowColumns = 1 }
            : setting == PrintSetting.InkSaving ? rhythm with { Look = rhythm.Look with { Ink = Ink.Sparing }, ShowsCloth = false } : rhythm;
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
