using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>The patterns that somebody has open: one session each, dropped when the last window is closed.</summary>
internal sealed class OpenPatterns(Workroom workroom, OpenSessions sessions, Wording wording, ILogger<OpenPatterns> log)
{
    private readonly Lock _gate = new();
    private readonly Dictionary<PatternId, PatternSession> _sessions = [];

    /// <summary>Number of patterns that are open.</summary>
    public int Count
    {
        get
        {
            lock (_gate)
            {
                return _sessions.Count;
            }
        }
    }

    /// <summary>Takes a seat at a pattern; null when the maker has no such pattern, or their session has ended.</summary>
    /// <param name="maker">Who sits down.</param>
    /// <param name="stamp">The stamp of the session in which they do; asked again at every save.</param>
    /// <param name="id">The pattern.</param>
    /// <param name="changed">Called whenever another window went on with the pattern; on any thread, and not to be kept waiting.</param>
    public async Task<PatternSeat?> JoinAsync(MakerId maker, string stamp, PatternId id, Action changed)
    {
        if (!await sessions.IsCurrentAsync(maker, stamp) || await workroom.OpenAsync(maker, id) is not { } open)
        {
            return null;
        }

        lock (_gate)
        {
            if (!_sessions.TryGetValue(id, out var session))
            {
                session = new PatternSession(id, open.Now, workroom, sessions, wording, log);
                _sessions.Add(id, session);
            }

            var seat = new PatternSeat(session, maker, stamp, changed, Leave);
            session.Seats.Add(seat);
            return seat;
        }
    }

    private void Leave(PatternSeat seat)
    {
        lock (_gate)
        {
            seat.Session.Seats.Remove(seat);
            if (seat.Session.Seats.IsEmpty)
            {
                _sessions.Remove(seat.Session.Id);
            }
        }
    }
}
