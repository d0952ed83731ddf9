using System.Collections.Immutable;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>What stays open after its request in a session: workbenches and their connections. They are told when the session has ended.</summary>
internal sealed class OpenSessions(Makers makers)
{
    private ImmutableList<Entry> _open = [];

    /// <summary>Registers something that is open.</summary>
    /// <param name="maker">Who opened it.</param>
    /// <param name="stamp">The stamp of the session in which they did.</param>
    /// <param name="ended">Called once, on any thread, when the session is found to have ended.</param>
    /// <returns>Disposed when it is closed.</returns>
    public IDisposable Add(MakerId maker, string stamp, Action ended)
    {
        var entry = new Entry(this, (maker, stamp), ended);
        ImmutableInterlocked.Update(ref _open, static (open, one) => open.Add(one), entry);
        return entry;
    }

    /// <summary>Asks the store whether a session still stands. Whatever is open in one that does not is told.</summary>
    public async Task<bool> IsCurrentAsync(MakerId maker, string stamp, CancellationToken cancellationToken = default)
    {
        if (await makers.IsCurrentAsync(maker, stamp, cancellationToken))
        {
            return true;
        }

        End(maker, stamp);
        return false;
    }

    /// <summary>Tells whatever is open in a session that it has ended.</summary>
    public void End(MakerId maker, string stamp)
    {
        foreach (var entry in _open.Where(entry => entry.Session == (maker, stamp)))
        {
            entry.End();
        }
    }

    /// <summary>Asks about every session in which something is open.</summary>
    public async Task CheckAsync(CancellationToken cancellationToken = default)
    {
        foreach (var (maker, stamp) in _open.Select(entry => entry.Session).Distinct())
        {
            await IsCurrentAsync(maker, stamp, cancellationToken);
        }
    }

    private sealed class Entry(OpenSessions sessions, (MakerId Maker, string Stamp) session, Action ended) : IDisposable
    {
        private Action? _ended = ended;

        public (MakerId Maker, string Stamp) Session => session;

        public void End()
        {
            Dispose();
            Interlocked.Exchange(ref _ended, null)?.Invoke();
        }

        public void Dispose() => ImmutableInterlocked.Update(ref sessions._open, static (open, one) => open.Remove(one), this);
    }
}
