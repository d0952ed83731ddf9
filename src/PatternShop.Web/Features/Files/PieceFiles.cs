using System.Runtime.CompilerServices;
using PatternShop.Print;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A file made from a piece.</summary>
/// <param name="Kind">How its name ends, such as "a4.pdf".</param>
/// <param name="Title">What it is, in words.</param>
/// <param name="MediaType">Its media type.</param>
/// <param name="Bytes">Its bytes.</param>
internal sealed record MadeFile(string Kind, string Title, string MediaType, byte[] Bytes);

/// <summary>Makes every file of a piece.</summary>
internal sealed class PieceFiles(Wording wording)
{
    private readonly ConditionalWeakTable<Piece, IReadOnlyList<MadeFile>> _made = [];

    /// <summary>The files of a piece that is not issued; kept as long as the piece itself.</summary>
    public IReadOnlyList<MadeFile> Of(Piece piece) => _made.GetValue(piece, unissued => Make(unissued, VersionLine.NotIssued));

    /// <summary>The files of a version.</summary>
    public IReadOnlyList<MadeFile> Make(Piece piece, VersionLine version) =>
        [.. Editions.All.Select(edition => new MadeFile(edition.Kind, edition.Title, edition.MediaType, edition.Make(piece, version, wording)))];
}
