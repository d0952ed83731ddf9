using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>The printable of a piece: what a maker gives or sells.</summary>
public static class Printable
{
    // With more pages than this nobody minds one more.
    private const int WorthSaving = 4;

    private const int MostSetAgain = 60;
    private const double LittleUsed = 0.5;

    /// <summary>The printable as a PDF file. The same piece, version line, paper, words and setting give the same bytes.</summary>
    public static byte[] Make(Piece piece, VersionLine version, Paper paper, Wording wording, PrintSetting? setting = null) =>
        Painter.Paint(Plan(piece, version, paper, wording, setting));

    /// <summary>The pages of the printable, before they are painted.</summary>
    internal static PrintPlan Plan(Piece piece, VersionLine version, Paper paper, Wording wording, PrintSetting? setting = null)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(version);
        ArgumentNullException.ThrowIfNull(paper);
        ArgumentNullException.ThrowIfNull(wording);
        setting ??= PrintSetting.Standard;
        var sheet = new SheetFrame(piece, version, paper, wording, setting);
        var document = piece.Document;
        return new PrintPlan(paper, new FileFacts(document.Title, wording.Language, version.Text(wording), document.Licence, wording.PrintSubject), Set(sheet).Pages);
    }

    /// <summary>How a printable is set, and its pages: on one page if it can be, else as it flows.</summary>
    internal static (Rhythm Rhythm, Sequence<PagePlan> Pages) Set(SheetFrame sheet)
    {
        if (OnePage.Find(sheet) is not { } rhythm)
        {
            return Flow(sheet);
        }

        var after = Fewest(Rhythm.AfterOnePage(sheet.Setting), way => sheet.Pages(sheet.Closing(way))).Way;
        var pages = sheet.Pages(rhythm, after, true);
        var closer = sheet.Used(pages[0]) + sheet.Used(pages[^1]) < 1 ? sheet.Pages(rhythm, after, false) : pages;
        return (rhythm, closer.Count < pages.Count ? closer : pages);
    }

    // A last page with little on it is saved where what comes after the rows can be set closer.
    private static (Rhythm Rhythm, Sequence<PagePlan> Pages) Flow(SheetFrame sheet)
    {
        var ways = Rhythm.Flowing(sheet.Setting).Select(way => Adapted.Of(sheet, way));
        var (rhythm, pages) = Fewest(ways, way => sheet.Pages(way, way, false));
        var closer = pages.Count <= MostSetAgain && sheet.Used(pages[^1]) < LittleUsed ? sheet.Pages(rhythm, Rhythm.AfterOnePage(sheet.Setting)[^1], false) : pages;
        return (rhythm, closer.Count < pages.Count ? closer : pages);
    }

    // The most generous way that saves a page.
    private static (T Way, Sequence<PagePlan> Pages) Fewest<T>(IEnumerable<T> ways, Func<T, Sequence<PagePlan>> pagesOf)
    {
        (T Way, Sequence<PagePlan> Pages)? best = null;
        foreach (var way in ways)
        {
            var pages = pagesOf(way);
            best = best is null || pages.Count < best.Value.Pages.Count ? (way, pages) : best;
            if (best.Value.Pages.Count is 1 or > WorthSaving)
            {
                break;
            }
        }

        return best!.Value;
    }
}
