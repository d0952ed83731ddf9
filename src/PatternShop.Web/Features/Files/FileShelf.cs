using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>The issued files that were asked for last, so that many readers of one file cost one reading of it.</summary>
internal sealed class FileShelf(PublicShelf store)
{
    private const long MostBytes = 32L * 1024 * 1024;
    private readonly BoundedShelf<Kept> _shelf = new(MostBytes, static kept => kept.File.Bytes.Length);
    private long _round;

    /// <summary>A file by the hash of its bytes; null when readers have none such.</summary>
    public async Task<ShelfFile?> FindAsync(string hash, CancellationToken cancellationToken)
    {
        // read before the store is asked: what was found before a withdrawal is then of an old round, however late it is put here
        var round = Interlocked.Read(ref _round);
        if (_shelf.TryGet(hash, out var kept) && kept!.Round == round)
        {
            return kept.File;
        }

        var file = await store.FileAsync(hash, cancellationToken);
        if (file is not null)
        {
            _shelf.Put(hash, new Kept(round, file));
        }

        return file;
    }

    /// <summary>Asks the store anew for every file: something was hidden.</summary>
    public void Forget() => Interlocked.Increment(ref _round);

    private sealed record Kept(long Round, ShelfFile File);
}
