using System.Runtime.CompilerServices;
using System.Text;
using PatternShop.Print;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A file made from a piece.</summary>
/// <param name="Kind">How its name ends, such as "a4.pdf".</param>
/// <param name="Title">What it is, in words.</param>
/// <param name="MediaType">Its media type.</param>
/// <param name="Bytes">Its bytes.</param>
internal sealed record MadeFile(string Kind, string Title, string MediaType, byte[] Bytes);

/// <summary>Makes every file of a piece that is not issued; kept as long as the piece itself.</summary>
internal sealed class PieceFiles(Wording wording)
{
    private readonly ConditionalWeakTable<Piece, IReadOnlyList<MadeFile>> _made = [];

    public IReadOnlyList<MadeFile> Of(Piece piece) => _made.GetValue(piece, Make);

    private IReadOnlyList<MadeFile> Make(Piece piece) =>
    [
        Pdf("a4.pdf", "Printable, A4 (PDF)", piece, Paper.A4),
        Pdf("letter.pdf", "Printable, Letter (PDF)", piece, Paper.Letter),
        Text("chart.svg", "Chart as a picture (SVG)", "image/svg+xml", ChartSvg(piece)),
        Text("directions.txt", "Directions as text", "text/plain; charset=utf-8", WrittenDirections.Text(piece, wording)),
        Text("facts.json", "Facts for programs (JSON)", "application/json", PieceFacts.Json(piece, wording)),
    ];

    private MadeFile Pdf(string kind, string title, Piece piece, Paper paper) =>
        new(kind, title, "application/pdf", Printable.Make(piece, VersionLine.NotIssued, paper, wording));

    private string ChartSvg(Piece piece) =>
        SvgText.Of(ChartDrawing.Of(piece, 6, wording), piece.Document.Title, wording.ChartDescription(piece), "chart");

    private static MadeFile Text(string kind, string title, string mediaType, string text) =>
        new(kind, title, mediaType, Encoding.UTF8.GetBytes(text));
}
