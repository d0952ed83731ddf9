namespace PatternShop.Weave;

/// <summary>Compares rows as the needle meets them.</summary>
internal static class Travelled
{
    /// <summary>Whether two rows, of one piece or of two, do the same at every end in the order of their travel.</summary>
    public static bool Alike(Piece one, int reading, Piece other, int otherReading)
    {
        if (one.Ends != other.Ends)
        {
            return false;
        }

        var cells = one.Cells.RowWords(reading);
        var others = other.Cells.RowWords(otherReading);
        if (one.Keys[reading].From == other.Keys[otherReading].From)
        {
            return cells.SequenceEqual(others);
        }

        for (var column = 0; column < one.Ends; column++)
        {
            if (Has(cells, column) != Has(others, one.Ends - 1 - column))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Has(ReadOnlySpan<ulong> words, int column) => (words[column >> 6] >> (column & 63) & 1) != 0;
}
