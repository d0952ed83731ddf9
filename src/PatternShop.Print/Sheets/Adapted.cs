namespace PatternShop.Print;

/// <summary>
/// What flows over several pages is set for its size. Rows that take many lines each are set smaller and in two columns: short lines in which
/// the eye finds its place again, and fewer sheets; very many rows are set smaller. Where only the words at the brackets would cut the chart, they
/// go: order of work and rows say the same.
/// </summary>
internal static class Adapted
{
    private const double Long = 3;
    private const double VeryLong = 7;
    private const double ManyLines = 160;
    private const int Looked = 64;

    public static Rhythm Of(SheetFrame sheet, Rhythm rhythm) => WithRowsFor(sheet, WithBracketsFor(sheet, rhythm));

    /// <summary>The rhythm, with words at brackets only where they leave cells their size.</summary>
    public static Rhythm WithBracketsFor(SheetFrame sheet, Rhythm rhythm)
    {
        var bare = rhythm with { Look = rhythm.Look with { BareBrackets = true } };
        return Cell(rhythm) < rhythm.Cells.Least && Cell(bare) >= rhythm.Cells.Least ? bare : rhythm;

        double Cell(Rhythm way) => new ChartSheets(sheet.Piece, way, sheet.Wording, sheet.Room.Height).WholeCell(sheet.Room with { Height = double.PositiveInfinity });
    }

    // Large print stays as it is.
    private static Rhythm WithRowsFor(SheetFrame sheet, Rhythm rhythm)
    {
        if (sheet.Setting == PrintSetting.LargePrint)
        {
            return rhythm;
        }

        var (lines, rows) = (Lines(sheet, rhythm), sheet.Piece.Bands.Sum(band => (long)band.PrintedRows));
        return lines >= Long ? rhythm.ForLongRows(lines >= VeryLong) : Math.Ceiling(lines) * rows >= ManyLines ? rhythm.ForManyRows() : rhythm;
    }

    // How many lines some readings all through the piece take on average.
    private static double Lines(SheetFrame sheet, Rhythm rhythm)
    {
        var readings = sheet.Piece.PrintedRows().Select(number => sheet.Piece.Reading(number)).DistinctBy(reading => reading.Key).ToList();
        var every = ((readings.Count - 1) / Looked) + 1;
        var width = RowsBlock.DirectionsRoom(sheet.Piece, rhythm, sheet.Wording, sheet.Room.Width);
        return readings.Where((_, i) => i % every == 0).Average(reading => Lettering.Width(sheet.Wording.WritingText(reading.Writing), rhythm.Styles.Directions) / width);
    }
}
