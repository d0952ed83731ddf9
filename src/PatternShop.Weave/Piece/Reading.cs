namespace PatternShop.Weave;

/// <summary>Where the cells of a row come from.</summary>
public enum RowKind
{
    /// <summary>A row of the motif.</summary>
    Chart,

    /// <summary>A plain row: pattern ends alternate.</summary>
    Plain,
}

/// <summary>
/// The source of a woven row. For a chart row, Index is the motif's row from 0; for a plain row it is 0 when end 1
/// goes under and 1 when it goes over.
/// </summary>
public readonly record struct RowSource(RowKind Kind, int Index);

/// <summary>
/// What a row reads depends on: the source, the side from which the row is woven and what the floating ends do.
/// Rows that share these share one reading.
/// </summary>
/// <param name="Source">Where the cells come from.</param>
/// <param name="From">The side at which the weft enters.</param>
/// <param name="LeftFloating">What the weft does at the left floating end; null without floating selvedges.</param>
/// <param name="RightFloating">The same at the right.</param>
public readonly record struct ReadingKey(RowSource Source, Side From, Stroke? LeftFloating, Stroke? RightFloating);

/// <summary>A reading with its runs.</summary>
/// <param name="Key">What it depends on.</param>
/// <param name="Runs">The runs over all ends, floating ones included, in the direction of travel.</param>
/// <param name="Writing">The shortest writing of the runs.</param>
public sealed record Reading(ReadingKey Key, Sequence<Run> Runs, Writing Writing);

/// <summary>One row of the weaving order.</summary>
/// <param name="Number">From 1, counted over the whole piece, plain rows included.</param>
/// <param name="Source">Where its cells come from.</param>
/// <param name="Weft">The weft that weaves it; 1 is the first.</param>
/// <param name="Step">The step of the row plan, from 0.</param>
/// <param name="Time">Which time through the repeated rows, from 1; null outside repeats.</param>
/// <param name="Reading">Index into <see cref="Piece.Readings"/>.</param>
/// <param name="From">The side at which the weft enters.</param>
public readonly record struct WovenRow(int Number, RowSource Source, int Weft, int Step, int? Time, int Reading, Side From)
{
    /// <summary>The motif's row from 1; null for a plain row.</summary>
    public int? ChartRow => Source.Kind == RowKind.Chart ? Source.Index + 1 : null;

    /// <summary>The side at which the weft leaves.</summary>
    public Side To => From.Other();
}

/// <summary>An edge stitch where it is worked.</summary>
/// <param name="AfterRow">Number of rows woven before it; 0 at the very beginning.</param>
/// <param name="Step">The step of the row plan, from 0.</param>
/// <param name="Time">Which time through the repeated rows, from 1; null outside repeats.</param>
/// <param name="Stitch">The stitch.</param>
/// <param name="From">The side at which it begins.</param>
public sealed record WovenStitch(int AfterRow, int Step, int? Time, EdgeStitch Stitch, Side From)
{
    /// <summary>The side at which its yarn ends.</summary>
    public Side To => Stitch.Across % 2 == 0 ? From : From.Other();
}

/// <summary>The other of two.</summary>
public static class Opposites
{
    public static Side Other(this Side side) => side == Side.Left ? Side.Right : Side.Left;

    public static Stroke Other(this Stroke stroke) => stroke == Stroke.Over ? Stroke.Under : Stroke.Over;
}
