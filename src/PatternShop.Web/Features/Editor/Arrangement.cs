using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Numbers the arrangements of a list: a new one begins when items are added, removed or moved, and not when a field of one item changes.</summary>
internal sealed class Arrangement<T>
{
    private Sequence<T>? _last;
    private int _number;

    /// <summary>The number of the list's arrangement now.</summary>
    public int Of(Sequence<T> items)
    {
        if (_last is { } last && (last.Count != items.Count || last.Zip(items).Count(pair => !Equals(pair.First, pair.Second)) > 1))
        {
            _number++;
        }

        _last = items;
        return _number;
    }
}
