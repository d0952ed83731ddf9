using System.Text;
using PatternShop.Print;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A kind of file that is made of every piece.</summary>
/// <param name="Kind">How its name ends, such as "a4.pdf"; names the edition within a version.</param>
/// <param name="Title">What it is, in words.</param>
/// <param name="MediaType">Its media type.</param>
/// <param name="Make">Makes its bytes; the same input makes the same bytes.</param>
internal sealed record Edition(string Kind, string Title, string MediaType, Func<Piece, VersionLine, Wording, byte[]> Make)
{
    /// <summary>Whether it is made of issued versions only: there are more ways to print those.</summary>
    public bool OfVersionsOnly { get; init; }
}

/// <summary>The fixed list of editions, in the order in which readers see them.</summary>
internal static class Editions
{
    private const double CellMillimetres = 6;

    public static IReadOnlyList<Edition> All { get; } =
    [
        Sheet("a4.pdf", "Printable, A4 (PDF)", Paper.A4, PrintSetting.Standard),
        Sheet("letter.pdf", "Printable, Letter (PDF)", Paper.Letter, PrintSetting.Standard),
        Sheet("a4-large.pdf", "Large print, A4 (PDF)", Paper.A4, PrintSetting.LargePrint),
        Sheet("letter-large.pdf", "Large print, Letter (PDF)", Paper.Letter, PrintSetting.LargePrint),
        Sheet("a4-ink-saving.pdf", "With little ink, A4 (PDF)", Paper.A4, PrintSetting.InkSaving),
        Sheet("letter-ink-saving.pdf", "With little ink, Letter (PDF)", Paper.Letter, PrintSetting.InkSaving),
        Cover("a4-row-cover.pdf", "Row cover to cut out, A4 (PDF)", Paper.A4),
        Cover("letter-row-cover.pdf", "Row cover to cut out, Letter (PDF)", Paper.Letter),
        new("chart.svg", "Chart as a picture (SVG)", "image/svg+xml", static (piece, _, wording) => Bytes(ChartSvg(piece, wording))),
        new("directions.txt", "Directions as text", "text/plain; charset=utf-8", static (piece, _, wording) => Bytes(WrittenDirections.Text(piece, wording))),
        new("facts.json", "Facts for programs (JSON)", "application/json", static (piece, _, wording) => Bytes(PieceFacts.Json(piece, wording))),
    ];

    /// <summary>How many editions, the first ones, are what most readers want.</summary>
    public const int Primary = 2;

    /// <summary>What an edition is called; one that is made no longer goes by its kind.</summary>
    public static string Title(string kind) => All.FirstOrDefault(edition => edition.Kind == kind)?.Title ?? kind;

    private static Edition Sheet(string kind, string title, Paper paper, PrintSetting setting) =>
        new(kind, title, "application/pdf", (piece, version, wording) => Printable.Make(piece, version, paper, wording, setting)) { OfVersionsOnly = setting != PrintSetting.Standard };

    private static Edition Cover(string kind, string title, Paper paper) =>
        new(kind, title, "application/pdf", (piece, version, wording) => RowCover.Make(piece, version, paper, wording)) { OfVersionsOnly = true };

    private static string ChartSvg(Piece piece, Wording wording) =>
        SvgText.Of(ChartDrawing.Of(piece, CellMillimetres, wording), piece.Document.Title, wording.ChartDescription(piece), "chart");

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
