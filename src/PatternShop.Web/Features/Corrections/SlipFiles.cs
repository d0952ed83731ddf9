using PatternShop.Print;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// Correction slips, made when they are asked for: any two versions may be chosen, versions never change, and the same two give the
/// same bytes.
/// </summary>
internal sealed class SlipFiles(VersionReader reader, ShopAddress shop, Wording wording)
{
    private const long MostBytes = 8L * 1024 * 1024;
    private readonly BoundedShelf<byte[]> _shelf = new(MostBytes, static bytes => bytes.Length);

    public static IReadOnlyList<Paper> Papers { get; } = [Paper.A4, Paper.Letter];

    public static string NameOf(Paper paper) => paper == Paper.A4 ? "a4.pdf" : "letter.pdf";

    /// <summary>The slip; null when readers cannot see both versions, or there is no such paper.</summary>
    public async Task<byte[]?> FindAsync(ShelfPattern pattern, int from, int to, string file, CancellationToken cancellationToken)
    {
        if (from >= to
            || Papers.FirstOrDefault(paper => NameOf(paper) == file) is not { } paper
            || await reader.FindAsync(pattern.Id, from, cancellationToken) is not { } old
            || await reader.FindAsync(pattern.Id, to, cancellationToken) is not { } @new)
        {
            return null;
        }

        var address = await shop.CurrentAsync(cancellationToken);
        var lines = (Line(pattern, old.Version, address), Line(pattern, @new.Version, address));
        var key = $"{old.Version.Hash}/{@new.Version.Hash}/{file}/{lines}";
        if (!_shelf.TryGet(key, out var bytes))
        {
            bytes = CorrectionSlip.Make(old.Piece, @new.Piece, lines, paper, wording);
            _shelf.Put(key, bytes);
        }

        return bytes;
    }

    private static VersionLine Line(ShelfPattern pattern, IssuedVersion version, string? address) => new(version.Number, version.Date)
    {
        Maker = pattern.StudioName,
        Copy = version.Code is { } code ? new Copy(code.Spaced, address is null ? null : $"{address}/c/{code.Value}") : null,
    };
}
