using System.Numerics;

namespace PatternShop.Weave;

/// <summary>The colours of the threads of a piece.</summary>
public static class PieceColours
{
    /// <summary>
    /// The name of an end's colour: its place in the order of the ends, else the warp's; null where nothing is said. A floating end has the
    /// colour of the pattern end beside it.
    /// </summary>
    /// <param name="piece">The piece.</param>
    /// <param name="column">The end, from 0 at the left, floating ends included.</param>
    public static string? EndColourName(this Piece piece, int column)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var end = Math.Clamp(column - piece.FloatingPerSide, 0, piece.PatternEnds - 1);
        return ColourOrder.At(piece.Document.Cloth.Ends, end) ?? piece.Document.Cloth.Warp.Colour;
    }

    /// <summary>The name of a row's colour: its place in the order of the rows, else its weft's; null where nothing is said.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="number">The row's number, from 1.</param>
    public static string? RowColourName(this Piece piece, int number)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return ColourOrder.At(piece.Document.Cloth.Rows, number - 1) ?? piece.Document.Cloth.Weft(piece.Rows[number - 1].Weft).Colour;
    }

    /// <summary>At how many crossings of the whole piece the weft is over.</summary>
    public static int CrossingsOver(this Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var over = Enumerable.Range(0, piece.Keys.Count).Select(reading => Over(piece.Cells.RowWords(reading))).ToArray();
        return piece.Rows.Sum(row => over[row.Reading]);
    }

    private static int Over(ReadOnlySpan<ulong> words)
    {
        var over = 0;
        foreach (var word in words)
        {
            over += BitOperations.PopCount(word);
        }

        return over;
    }

    /// <summary>How an end is shown; null where nothing is said.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="column">The end, from 0 at the left, floating ends included.</param>
    public static Rgb? EndColour(this Piece piece, int column) =>
        piece.EndColourName(column) is { } name ? piece.Document.Cloth.Find(name) : null;

    /// <summary>How a row is shown; null where nothing is said.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="number">The row's number, from 1.</param>
    public static Rgb? RowColour(this Piece piece, int number) =>
        piece.RowColourName(number) is { } name ? piece.Document.Cloth.Find(name) : null;
}
