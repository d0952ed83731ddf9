namespace PatternShop.Web;

/// <summary>
/// Counts tries by key in windows of a fixed length. All windows end together, so what is remembered is dropped at once
/// and stays bounded: when it is full, keys that are new wait for the next window.
/// </summary>
internal sealed class Throttle(TimeProvider time, int most, TimeSpan window)
{
    private const int MostKeys = 10_000;
    private readonly Lock _gate = new();
    private readonly Dictionary<string, int> _tries = new(StringComparer.Ordinal);
    private long _window;

    /// <summary>Counts a try. Null when it may go on, else how long to wait.</summary>
    public TimeSpan? Wait(string key)
    {
        var now = time.GetUtcNow().Ticks;
        lock (_gate)
        {
            if (now / window.Ticks != _window)
            {
                _window = now / window.Ticks;
                _tries.Clear();
            }

            var tries = _tries.GetValueOrDefault(key);
            if (tries >= most || (tries == 0 && _tries.Count >= MostKeys))
            {
                return TimeSpan.FromTicks(((_window + 1) * window.Ticks) - now);
            }

            _tries[key] = tries + 1;
            return null;
        }
    }
}
