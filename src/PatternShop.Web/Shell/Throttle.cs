namespace PatternShop.Web;

/// <summary>
/// Counts tries by key in windows of a fixed length, all of which end together. It remembers a bounded number of keys: when
/// it is full it forgets the one with the fewest tries, the oldest among those, and never turns a new key away.
/// </summary>
internal sealed class Throttle
{
    /// <summary>How many keys are remembered.</summary>
    public const int MostKeys = 10_000;

    private readonly TimeProvider _time;
    private readonly TimeSpan _length;
    private readonly Lock _gate = new();
    private readonly Dictionary<string, LinkedListNode<string>> _keys = new(StringComparer.Ordinal);

    // keys by the number of their tries, those that were counted last at the end
    private readonly LinkedList<string>[] _byTries;
    private long _window;

    /// <param name="time">The clock.</param>
    /// <param name="most">Tries of one key in a window.</param>
    /// <param name="length">The length of a window.</param>
    public Throttle(TimeProvider time, int most, TimeSpan length)
    {
        (_time, _length) = (time, length);
        _byTries = [.. Enumerable.Range(0, most).Select(_ => new LinkedList<string>())];
    }

    /// <summary>Counts a try. Null when it may go on, else how long to wait.</summary>
    public TimeSpan? Wait(string key)
    {
        var now = _time.GetUtcNow().Ticks;
        lock (_gate)
        {
            Begin(now / _length.Ticks);
            var place = _keys.GetValueOrDefault(key);
            if (place is not null && place.List == _byTries[^1])
            {
                return TimeSpan.FromTicks(((_window + 1) * _length.Ticks) - now);
            }

            if (place is null && _keys.Count == MostKeys)
            {
                Forget();
            }

            _keys[key] = Next(place).AddLast(key);
            place?.List!.Remove(place);
            return null;
        }
    }

    private void Begin(long window)
    {
        if (window != _window)
        {
            _window = window;
            _keys.Clear();
            Array.ForEach(_byTries, keys => keys.Clear());
        }
    }

    private LinkedList<string> Next(LinkedListNode<string>? place) =>
        place is null ? _byTries[0] : _byTries[Array.IndexOf(_byTries, place.List) + 1];

    private void Forget()
    {
        var fewest = Array.Find(_byTries, keys => keys.Count > 0)!;
        _keys.Remove(fewest.First!.Value);
        fewest.RemoveFirst();
    }
}
