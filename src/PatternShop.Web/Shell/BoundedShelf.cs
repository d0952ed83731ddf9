namespace PatternShop.Web;

/// <summary>Keeps what was asked for last, up to a total weight.</summary>
internal sealed class BoundedShelf<T>(long most, Func<T, long> weight)
{
    private readonly Lock _gate = new();
    private readonly Dictionary<string, LinkedListNode<(string Key, T Value)>> _places = new(StringComparer.Ordinal);
    private readonly LinkedList<(string Key, T Value)> _newestFirst = [];
    private long _weight;

    public bool TryGet(string key, out T? value)
    {
        lock (_gate)
        {
            if (!_places.TryGetValue(key, out var place))
            {
                value = default;
                return false;
            }

            _newestFirst.Remove(place);
            _newestFirst.AddFirst(place);
            value = place.Value.Value;
            return true;
        }
    }

    /// <summary>Puts a thing on the shelf and takes down what was not asked for longest. What is too heavy by itself is not kept.</summary>
    public void Put(string key, T value)
    {
        lock (_gate)
        {
            Remove(key);
            if (weight(value) > most)
            {
                return;
            }

            _places[key] = _newestFirst.AddFirst((key, value));
            _weight += weight(value);
            while (_weight > most)
            {
                Remove(_newestFirst.Last!.Value.Key);
            }
        }
    }

    private void Remove(string key)
    {
        if (_places.Remove(key, out var place))
        {
            _newestFirst.Remove(place);
            _weight -= weight(place.Value.Value);
        }
    }
}
