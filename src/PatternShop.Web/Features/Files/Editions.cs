using System.Text;
using PatternShop.Print;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A kind of file that is made of every piece.</summary>
/// <param name="Kind">How its name ends, such as "a4.pdf"; names the edition within a version.</param>
/// <param name="Title">What it is, in words.</param>
/// <param name="MediaType">Its media type.</param>
/// <param name="Make">Makes its bytes; the same input makes the same bytes.</param>
internal sealed record Edition(string Kind, string Title, string MediaType, Func<Piece, VersionLine, Wording, byte[]> Make);

/// <summary>The fixed list of editions, in the order in which readers see them.</summary>
internal static class Editions
{
    private const double CellMillimetres = 6;

    public static IReadOnlyList<Edition> All { get; } =
    [
        new("a4.pdf", "Printable, A4 (PDF)", "application/pdf", static (piece, version, wording) => Printable.Make(piece, version, Paper.A4, wording)),
        new("letter.pdf", "Printable, Letter (PDF)", "application/pdf", static (piece, version, wording) => Printable.Make(piece, version, Paper.Letter, wording)),
        new("chart.svg", "Chart as a picture (SVG)", "image/svg+xml", static (piece, _, wording) => Bytes(ChartSvg(piece, wording))),
        new("directions.txt", "Directions as text", "text/plain; charset=utf-8", static (piece, _, wording) => Bytes(WrittenDirections.Text(piece, wording))),
        new("facts.json", "Facts for programs (JSON)", "application/json", static (piece, _, wording) => Bytes(PieceFacts.Json(piece, wording))),
    ];

    /// <summary>What an edition is called; one that is made no longer goes by its kind.</summary>
    public static string Title(string kind) => All.FirstOrDefault(edition => edition.Kind == kind)?.Title ?? kind;

    private static string ChartSvg(Piece piece, Wording wording) =>
        SvgText.Of(ChartDrawing.Of(piece, CellMillimetres, wording), piece.Document.Title, wording.ChartDescription(piece), "chart");

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
