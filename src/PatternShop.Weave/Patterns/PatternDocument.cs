namespace PatternShop.Weave;

/// <summary>A side of the piece as the weaver sees it.</summary>
public enum Side
{
    Left,
    Right,
}

/// <summary>What the weft does at an end, on the side towards the weaver.</summary>
public enum Stroke
{
    Under,
    Over,
}

/// <summary>How the two floating selvedges go: both alike in a row and changing every row, or one each way at entering and leaving, every row the same.</summary>
public enum EdgeWay
{
    Alike,
    Entering,
}

/// <summary>How a chart tells over from under: filled cells and slim vertical lines, or horizontal and vertical bars.</summary>
public enum GlyphStyle
{
    Cells,
    Bars,
}

/// <summary>The length to which an amount of threads refers.</summary>
public enum DensityUnit
{
    PerInch,
    PerCentimetre,
    PerTenCentimetres,
}

/// <summary>Which yarn an edge stitch is made with.</summary>
public enum StitchYarn
{
    Own,
    Working,
}

/// <summary>
/// Everything that a maker decides about a pattern, and nothing that follows from it. Immutable; equal by value.
/// </summary>
/// <param name="Title">The pattern's name, 1 to 120 characters.</param>
/// <param name="Language">BCP 47 tag of the maker's own words, such as "en".</param>
/// <param name="Licence">What readers may do, in the maker's words; may be empty.</param>
/// <param name="Notes">The maker's own notes; may be empty.</param>
/// <param name="Motif">What is drawn: one group of ends by all its rows. True where the weft is over.</param>
/// <param name="Width">How the motif becomes the width of the piece.</param>
/// <param name="Rows">In which order rows are woven.</param>
/// <param name="Gauge">Ends and rows per length.</param>
/// <param name="Glyphs">How the chart is drawn.</param>
public sealed record PatternDocument(
    string Title,
    string Language,
    string Licence,
    string Notes,
    BitGrid Motif,
    WidthPlan Width,
    RowPlan Rows,
    Gauge Gauge,
    GlyphStyle Glyphs)
{
    /// <summary>The maker's own words for single chart rows, upwards, each row at most once.</summary>
    public Sequence<RowWords> RowWords { get; init; } = [];

    /// <summary>Videos that the maker points to, in the order in which they are shown.</summary>
    public Sequence<Video> Videos { get; init; } = [];

    /// <summary>Photos by the maker, in the order in which they are shown, each at most once.</summary>
    public Sequence<Photo> Photos { get; init; } = [];

    /// <summary>The longest float that the maker allows; null for no limit.</summary>
    public Limits? Limits { get; init; }

    /// <summary>Thicknesses and colours of the yarns, for the picture of the cloth.</summary>
    public ClothLook Cloth { get; init; } = ClothLook.Plain;

    /// <summary>What the printed sheets say after chart and rows.</summary>
    public AfterChart AfterChart { get; init; } = AfterChart.All;
}

/// <summary>
/// How the motif becomes the width: repeated, begun at an offset, and continued by balance ends.
/// </summary>
/// <param name="Repeats">Times the motif stands across, at least 1.</param>
/// <param name="Offset">The first pattern end is the motif's end Offset + 1; from 0, below the motif's width.</param>
/// <param name="Balance">Ends after the last motif, continuing it; 0 or more.</param>
/// <param name="Floating">The floating selvedges, one end a side, or null for none.</param>
public sealed record WidthPlan(int Repeats, int Offset, int Balance, FloatingSelvedges? Floating);

/// <summary>The two floating selvedges.</summary>
/// <param name="Edges">Whether both sides go alike in a row, or the one entered and the one left differ.</param>
/// <param name="First">What a weft does at the first floating end that it meets in its first row.</param>
public sealed record FloatingSelvedges(EdgeWay Edges, Stroke First);

/// <summary>
/// The order in which rows are woven.
/// </summary>
/// <param name="Wefts">The wefts, weft 1 first; at least one. Each has its own travel.</param>
/// <param name="FirstPlain">What the weft does at end 1 in the first plain row of a piece without floating selvedges; with them the left floating end decides.</param>
/// <param name="Steps">What is woven, in order.</param>
public sealed record RowPlan(Sequence<Weft> Wefts, Stroke FirstPlain, Sequence<RowStep> Steps)
{
    /// <summary>The numbers, from 1, of the wefts that weave a row or work an edge stitch; those that are only listed are not spoken of to readers.</summary>
    public Sequence<int> UsedWefts() => Steps
        .SelectMany(step => step is Repeat repeat ? repeat.Steps : [(SimpleStep)step])
        .Select(step => step switch
        {
            ChartRows chart => chart.Weft,
            PlainRows plain => plain.Weft,
            EdgeStitch { Yarn: StitchYarn.Working } stitch => stitch.Weft,
            _ => 0,
        })
        .Where(weft => weft > 0)
        .Distinct()
        .Order()
        .ToSequence();
}

/// <summary>One weft.</summary>
/// <param name="Start">The side at which its first row starts.</param>
public sealed record Weft(Side Start);

/// <summary>One step of a row plan.</summary>
public abstract record RowStep;

/// <summary>A step that may stand inside a repeat.</summary>
public abstract record SimpleStep : RowStep;

/// <summary>Rows of the motif, from First to Last, both counted and from 1; downwards if First &gt; Last.</summary>
public sealed record ChartRows(int First, int Last, int Weft) : SimpleStep
{
    /// <summary>Number of rows.</summary>
    public int Count => Math.Abs(Last - First) + 1;
}

/// <summary>Rows of plain weave.</summary>
public sealed record PlainRows(int Count, int Weft) : SimpleStep;

/// <summary>
/// An edge stitch, such as twining; not a row. It leaves the floating selvedges alone.
/// </summary>
/// <param name="Name">The stitch in the maker's words, 1 to 60 characters.</param>
/// <param name="Yarn">Its own yarn, or the weft that is being woven with.</param>
/// <param name="Across">Times across the piece, at least 1.</param>
/// <param name="From">The side from which it begins when it has its own yarn. A working weft begins where it is.</param>
/// <param name="Weft">Which weft, for the working yarn.</param>
public sealed record EdgeStitch(string Name, StitchYarn Yarn, int Across, Side From, int Weft) : SimpleStep;

/// <summary>Steps that are woven again and again.</summary>
public sealed record Repeat(int Times, Sequence<SimpleStep> Steps) : RowStep;

/// <summary>Threads per length, kept as typed but for zeros at the end: equal densities show alike.</summary>
/// <param name="Amount">Above 0.</param>
/// <param name="Unit">What the amount refers to.</param>
public sealed record Density(decimal Amount, DensityUnit Unit)
{
    /// <summary>The amount; a decimal remembers zeros at its end, this one has none.</summary>
    public decimal Amount { get; init => field = Plain.WithoutZeros(value); } = Plain.WithoutZeros(Amount);
}

/// <summary>Ends and rows per length.</summary>
public sealed record Gauge(Density Sett, Density Rows);
