namespace PatternShop.Weave;

/// <summary>The part of a chart that is drawn on one sheet.</summary>
/// <param name="FirstRow">The lowest printed row, from 0 at the bottom, as an index into the printed rows.</param>
/// <param name="Rows">How many printed rows.</param>
/// <param name="FirstColumn">The leftmost end, from 0, floating ends included.</param>
/// <param name="Columns">How many ends.</param>
public sealed record ChartWindow(int FirstRow, int Rows, int FirstColumn, int Columns)
{
    /// <summary>The whole chart of a piece.</summary>
    public static ChartWindow Whole(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return new ChartWindow(0, piece.Bands.Sum(band => band.PrintedRows), 0, piece.Ends);
    }
}
