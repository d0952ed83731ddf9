using System.Buffers.Binary;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>The part of a <see cref="StrokeText"/> that covers a box with a piece: "c0:0-3:5=2.2:AQI=".</summary>
internal static class CoveringText
{
    /// <summary>The stroke on a motif of so many rows and ends; null when the text is none.</summary>
    /// <param name="rows">Rows of the motif.</param>
    /// <param name="ends">Ends of the motif.</param>
    /// <param name="text">The text, from its letter on.</param>
    /// <param name="number">Reads a number; -1 for none.</param>
    public static SetCells? Read(int rows, int ends, string text, Func<string, int> number)
    {
        if (text[1..].Split('=', 2) is not [var box, var piece]
            || Pair(box.Split('-'), ':', number) is not [var row, var end, var lastRow, var lastEnd]
            || piece.Split(':') is not [var size, var cells]
            || Pair([size], '.', number) is not [>= 1 and <= Bounds.MotifRows and var pieceRows, >= 1 and <= Bounds.MotifEnds and var pieceEnds]
            || Cells(pieceRows, pieceEnds, cells) is not { } with)
        {
            return null;
        }

        var place = new CellRectangle(row, end, lastRow - row + 1, lastEnd - end + 1);
        return place.LiesIn(rows, ends)
            ? SetCells.Covering(rows, ends, place, with, text[0] == 'c' ? CellsAct.Cover : CellsAct.Paste)
            : null;
    }

    private static int[] Pair(string[] parts, char between, Func<string, int> number) =>
        [.. parts.SelectMany(part => part.Split(between)).Select(number)];

    private static BitGrid? Cells(int rows, int ends, string text)
    {
        var bytes = new byte[text.Length];
        var perRow = (ends + 7) / 8;
        if (!Convert.TryFromBase64String(text, bytes, out var length) || length != rows * perRow)
        {
            return null;
        }

        var words = new ulong[rows * ((ends + 63) >> 6)];
        Span<byte> row = stackalloc byte[((Bounds.MotifEnds + 63) >> 6) * sizeof(ulong)];
        for (var at = 0; at < rows; at++)
        {
            row.Clear();
            bytes.AsSpan(at * perRow, perRow).CopyTo(row);
            for (var word = 0; word < words.Length / rows; word++)
            {
                words[(at * (words.Length / rows)) + word] = BinaryPrimitives.ReadUInt64LittleEndian(row[(word * sizeof(ulong))..]);
            }
        }

        return BitGrid.FromWords(rows, ends, words);
    }
}
