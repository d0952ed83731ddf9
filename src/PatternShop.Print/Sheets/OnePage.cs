namespace PatternShop.Print;

/// <summary>Finds out whether everything that is needed at the loom fits one page, and how it is set then.</summary>
internal static class OnePage
{
    private const int MostRows = 48;
    private const double Rounding = 0.01;
    private const double Step = 0.5;

    // The smallest lettering is worth it where cells become so much larger, as long as they are not good yet.
    private const double WorthIt = 1.2;

    /// <summary>
    /// The most generous rhythm in which it fits with good cells, or else the one with the largest cells; the smallest lettering only where no
    /// other fits, or where it makes small cells much larger. Null where none does.
    /// </summary>
    public static Rhythm? Find(SheetFrame sheet)
    {
        if (sheet.Piece.Bands.Sum(band => (long)band.PrintedRows) > MostRows)
        {
            return null;
        }

        var usual = Best(sheet, Rhythm.ForOnePage(sheet.Setting));
        if (usual is not null && usual.Cells.Most >= Worth(usual))
        {
            return usual;
        }

        var floor = Best(sheet, Rhythm.AtTheFloor(sheet.Setting));
        var words = usual is null || floor?.Cells.Most >= WorthIt * usual.Cells.Most ? floor : usual;
        return words ?? Rhythm.InTheShortForm(sheet.Setting).Select(ways => Best(sheet, ways)).FirstOrDefault(rhythm => rhythm is not null);

        static double Worth(Rhythm rhythm) => rhythm.Cells.Good / WorthIt;
    }

    private static Rhythm? Best(SheetFrame sheet, IEnumerable<Rhythm> ways)
    {
        (Rhythm Rhythm, double Cell)? best = null;
        foreach (var rhythm in ways.Select(way => Adapted.WithBracketsFor(sheet, way)))
        {
            var chart = new ChartSheets(sheet.Piece, rhythm, sheet.Wording, sheet.Room.Height);
            var widest = chart.WholeCell(sheet.Room with { Height = double.PositiveInfinity });
            if (widest < rhythm.Cells.Least)
            {
                return null;
            }

            var cell = rhythm.HasSide ? Beside(sheet, rhythm, chart) : Above(sheet, rhythm, chart);
            if (cell >= rhythm.Cells.Least && (best is null || cell > best.Value.Cell))
            {
                var width = rhythm.HasSide ? chart.WidthWith(cell) + Rounding : 0;
                best = (rhythm with { Cells = rhythm.Cells with { Most = cell }, ChartWidth = width }, cell);
            }

            if (cell >= Math.Min(rhythm.Cells.Good, widest))
            {
                break;
            }
        }

        return best?.Rhythm;
    }

    private static double Above(SheetFrame sheet, Rhythm rhythm, ChartSheets chart)
    {
        var room = sheet.Room.Height - sheet.HeightWithoutChart(rhythm) - Rounding;
        return room <= 0 ? 0 : chart.WholeCell(new Room(sheet.Room.Width, room));
    }

    // Smaller cells leave more room at the right: the largest with which both fit.
    private static double Beside(SheetFrame sheet, Rhythm rhythm, ChartSheets chart)
    {
        var room = sheet.Room.Height - sheet.HeightAboveChart(rhythm) - sheet.HeightUnderSide(rhythm) - Rounding;
        var most = room <= 0 ? 0 : chart.WholeCell(new Room(sheet.Room.Width - Rhythm.ColumnGap - rhythm.LeastSide, room));
        for (var cell = most; cell >= rhythm.Cells.Least; cell = cell > rhythm.Cells.Least ? Math.Max(cell - Step, rhythm.Cells.Least) : 0)
        {
            if (sheet.HeightOfSide(rhythm, sheet.Room.Width - Rhythm.ColumnGap - chart.WidthWith(cell) - Rounding) <= room)
            {
                return cell;
            }
        }

        return 0;
    }
}
