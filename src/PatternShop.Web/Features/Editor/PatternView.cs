using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Where an open pattern stands, with the piece that follows from it. Everybody who has the pattern open shares it.</summary>
internal sealed class PatternView
{
    private readonly PatternState _now;
    private readonly Lazy<Piece> _piece;
    private readonly Lazy<Sequence<Finding>> _findings;
    private readonly Lazy<Task<Sequence<Advice>>> _advice;
    private readonly Lazy<Task<RepeatAdvice>> _repeats;

    public PatternView(PatternState now)
    {
        _now = now;
        _piece = new(() => Piece.Of(now.Document));
        _findings = new(() => Checks.Of(Piece));
        _advice = new(() => Task.Run(() => Remedies.Of(Piece, Findings)));
        _repeats = new(() => Task.Run(() => RepeatAdvice.Of(Piece)));
    }

    public long Revision => _now.Revision;

    public PatternDocument Document => _now.Document;

    public Piece Piece => _piece.Value;

    /// <summary>Everything that the checks found.</summary>
    public Sequence<Finding> Findings => _findings.Value;

    /// <summary>Whether remedies have been tried.</summary>
    public bool IsAdvised => _advice is { IsValueCreated: true, Value.IsCompletedSuccessfully: true };

    /// <summary>What mends the findings, once they are known: <see cref="IsAdvised"/>.</summary>
    public Sequence<Advice> Advice => IsAdvised ? _advice.Value.Result : [];

    /// <summary>Tries what mends the findings, away from whoever waits for something else; once, for everybody.</summary>
    public Task<Sequence<Advice>> AdviseAsync() => _advice.Value;

    /// <summary>Finds what repeats and mirrors, in the same way.</summary>
    public Task<RepeatAdvice> RepeatsAsync() => _repeats.Value;

    /// <summary>Works out what a page shows, away from whoever waits for something else; rows are read by <see cref="WrittenRows"/>, which keeps no readings.</summary>
    public Task PrepareAsync() => Task.Run(() => _ = (Piece, Findings));

    /// <summary>The step that undo would take back; null when there is none.</summary>
    public string? UndoName => _now.UndoName;

    /// <summary>The step that redo would bring back; null when there is none.</summary>
    public string? RedoName => _now.RedoName;
}
