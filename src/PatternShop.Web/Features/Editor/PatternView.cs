using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Where an open pattern stands, with the piece that follows from it. Everybody who has the pattern open shares it.</summary>
internal sealed class PatternView(PatternState now)
{
    private readonly Lazy<Piece> _piece = new(() => Piece.Of(now.Document));

    public long Revision => now.Revision;

    public PatternDocument Document => now.Document;

    public Piece Piece => _piece.Value;

    /// <summary>Works out everything that a page shows, away from whoever waits for something else.</summary>
    public Task PrepareAsync() => Task.Run(() => _ = Piece.Readings);

    /// <summary>The step that undo would take back; null when there is none.</summary>
    public string? UndoName => now.UndoName;

    /// <summary>The step that redo would bring back; null when there is none.</summary>
    public string? RedoName => now.RedoName;
}
