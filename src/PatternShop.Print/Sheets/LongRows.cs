namespace PatternShop.Print;

/// <summary>
/// Rows that take many lines each are set smaller and in two columns: short lines in which the eye finds its place again, and fewer sheets.
/// </summary>
internal static class LongRows
{
    private const double Long = 3;
    private const double VeryLong = 7;
    private const int Looked = 64;

    /// <summary>The rhythm with its rows set for their length. Large print stays as it is.</summary>
    public static Rhythm Of(SheetFrame sheet, Rhythm rhythm)
    {
        if (sheet.Setting == PrintSetting.LargePrint)
        {
            return rhythm;
        }

        var lines = Lines(sheet, rhythm);
        return lines < Long ? rhythm : rhythm.ForLongRows(lines >= VeryLong);
    }

    // Of some readings all through the piece, how many lines they take.
    private static double Lines(SheetFrame sheet, Rhythm rhythm)
    {
        var readings = sheet.Piece.PrintedRows().Select(number => sheet.Piece.Reading(number)).DistinctBy(reading => reading.Key).ToList();
        var every = ((readings.Count - 1) / Looked) + 1;
        var width = RowsBlock.DirectionsRoom(sheet.Piece, rhythm, sheet.Wording, sheet.Room.Width);
        return readings.Where((_, i) => i % every == 0).Average(reading => Lettering.Width(sheet.Wording.WritingText(reading.Writing), rhythm.Styles.Directions) / width);
    }
}
