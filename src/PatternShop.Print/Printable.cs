using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>The printable of a piece: what a maker gives or sells.</summary>
public static class Printable
{
    // With more pages than this nobody minds one more.
    private const int WorthSaving = 4;

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
        var pages = OnePage.Find(sheet) is { } rhythm ? sheet.Pages(rhythm, true) : Flow(sheet);
        var document = piece.Document;
        return new PrintPlan(paper, new FileFacts(document.Title, wording.Language, version.Text(wording), document.Licence, wording.PrintSubject), pages);
    }

    // The most generous way that saves a page.
    private static Sequence<PagePlan> Flow(SheetFrame sheet)
    {
        var ways = Rhythm.Flowing(sheet.Setting);
        var best = sheet.Pages(ways[0], false);
        foreach (var way in best.Count is > 1 and <= WorthSaving ? ways.Skip(1) : [])
        {
            var pages = sheet.Pages(way, false);
            best = pages.Count < best.Count ? pages : best;
        }

        return best;
    }
}
