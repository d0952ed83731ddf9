using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>The pieces of versions that were asked for last. A version never changes, so neither does its piece.</summary>
internal sealed class PieceShelf
{
    private const long MostCells = 4_000_000;
    private readonly BoundedShelf<Piece> _shelf = new(MostCells, static piece => ((long)piece.Rows.Count + 1) * (piece.Ends + 8));

    public Piece Of(ReadOnlySpan<byte> canonical)
    {
        var hash = PatternWriter.Hash(canonical);
        if (_shelf.TryGet(hash, out var kept))
        {
            return kept!;
        }

        var piece = PatternReader.ReadStored(canonical) is ReadResult.Read read
            ? Piece.Of(read.Document)
            : throw new StoreException("A version that was issued cannot be read.");
        _shelf.Put(hash, piece);
        return piece;
    }
}
