namespace PatternShop.Print;

/// <summary>Finds out whether everything that is needed at the loom fits one page, and how it is set then.</summary>
internal static class OnePage
{
    private const int MostRows = 48;
    private const double Rounding = 0.01;

    /// <summary>The most generous rhythm in which it fits with good cells, or else the one with the largest cells; null where there is none.</summary>
    public static Rhythm? Find(SheetFrame sheet)
    {
        if (sheet.Piece.Bands.Sum(band => (long)band.PrintedRows) > MostRows)
        {
            return null;
        }

        (Rhythm Rhythm, double Cell)? best = null;
        foreach (var rhythm in Rhythm.ForOnePage(sheet.Setting))
        {
            var chart = new ChartSheets(sheet.Piece, rhythm, sheet.Wording);
            var widest = chart.WholeCell(sheet.Room with { Height = double.PositiveInfinity });
            if (widest < rhythm.Cells.Least)
            {
                return null;
            }

            var room = sheet.Room.Height - sheet.HeightWithoutChart(rhythm) - Rounding;
            var cell = room <= 0 ? 0 : chart.WholeCell(new Room(sheet.Room.Width, room));
            if (cell >= rhythm.Cells.Least && (best is null || cell > best.Value.Cell))
            {
                best = (rhythm with { Cells = rhythm.Cells with { Most = cell } }, cell);
            }

            if (cell >= Math.Min(rhythm.Cells.Good, widest))
            {
                break;
            }
        }

        return best?.Rhythm;
    }
}
