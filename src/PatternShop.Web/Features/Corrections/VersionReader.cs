using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Reads issued versions as pieces, and lays them beside each other.</summary>
internal sealed class VersionReader(PublicShelf shelf, PieceShelf pieces, ComparisonShelf comparisons)
{
    /// <summary>A version that readers can see, with its piece; null when there is none.</summary>
    public async Task<(IssuedVersion Version, Piece Piece)?> FindAsync(PatternId id, int number, CancellationToken cancellationToken) =>
        await shelf.VersionAsync(id, number, cancellationToken) is { } version ? (version, pieces.Of(version.Canonical)) : null;

    /// <summary>Two versions beside each other; null when readers cannot see both.</summary>
    public async Task<Comparison?> CompareAsync(PatternId id, int from, int to, CancellationToken cancellationToken) =>
        await FindAsync(id, from, cancellationToken) is { } old && await FindAsync(id, to, cancellationToken) is { } @new
            ? comparisons.Of((old.Piece, old.Version.Hash), (@new.Piece, @new.Version.Hash))
            : null;
}
