using System.Collections.Immutable;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>One window's place at an open pattern.</summary>
internal sealed class PatternSeat : IDisposable
{
    private readonly Action _changed;
    private readonly Action<PatternSeat> _leave;

    public PatternSeat(PatternSession session, MakerId maker, string stamp, Action changed, Action<PatternSeat> leave)
    {
        (Session, Maker, Stamp, _changed, _leave) = (session, maker, stamp, changed, leave);
    }

    public PatternSession Session { get; }

    public MakerId Maker { get; }

    public string Stamp { get; }

    /// <summary>Where the pattern stands now.</summary>
    public PatternView View => Session.View;

    /// <summary>Makes an edit and saves it, once however often it is sent.</summary>
    /// <param name="client">Names the window.</param>
    /// <param name="sequence">The window's own number of the edit, from 1.</param>
    /// <param name="after">The number of the edit that must be settled before; 0 when there is none.</param>
    /// <param name="edit">The edit.</param>
    public Task<Acknowledgement> SubmitAsync(string client, long sequence, long after, Edit edit) =>
        Session.SubmitAsync(this, new EditMessage(client, sequence, after, edit));

    public Task<Acknowledgement> UndoAsync(string client, long sequence) => Session.UndoAsync(this, client, sequence);

    public Task<Acknowledgement> RedoAsync(string client, long sequence) => Session.RedoAsync(this, client, sequence);

    public void Dispose() => _leave(this);

    internal void Tell() => _changed();
}

/// <summary>Who sits at a pattern; read without a lock while others come and go.</summary>
internal sealed class Seats
{
    private ImmutableList<PatternSeat> _all = [];

    public bool IsEmpty => _all.IsEmpty;

    public void Add(PatternSeat seat) => ImmutableInterlocked.Update(ref _all, static (all, one) => all.Add(one), seat);

    public void Remove(PatternSeat seat) => ImmutableInterlocked.Update(ref _all, static (all, one) => all.Remove(one), seat);

    public void TellOthers(PatternSeat than)
    {
        foreach (var seat in _all.Where(seat => seat != than))
        {
            seat.Tell();
        }
    }
}
