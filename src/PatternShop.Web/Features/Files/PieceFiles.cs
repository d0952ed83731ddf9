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
    // large pieces take much memory each
    private const int AtATime = 2;

    private readonly ConditionalWeakTable<Piece, IReadOnlyList<MadeFile>> _made = [];

    /// <summary>The files of a piece that is not issued; kept as long as the piece itself.</summary>
    public IReadOnlyList<MadeFile> Of(Piece piece) =>
        _made.GetValue(piece, unissued => [.. Editions.All.Where(edition => !edition.OfVersionsOnly).Select(edition => Make(edition, unissued, VersionLine.NotIssued))]);

    /// <summary>The files of a version, in the order of the editions; a few are made at a time.</summary>
    public IReadOnlyList<MadeFile> Make(Piece piece, VersionLine version)
    {
        var made = new MadeFile[Editions.All.Count];
        Parallel.For(0, made.Length, new ParallelOptions { MaxDegreeOfParallelism = AtATime }, i => made[i] = Make(Editions.All[i], piece, version));
        return made;
    }

    private MadeFile Make(Edition edition, Piece piece, VersionLine version) =>
        new(edition.Kind, edition.Title, edition.MediaType, edition.Make(piece, version, wording));
}
