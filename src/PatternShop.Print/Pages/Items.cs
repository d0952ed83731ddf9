using System.Collections;
using System.Runtime.CompilerServices;
using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>
/// What is painted of a block, in reading order. It is worked out when somebody looks at it: most layouts are only tried, and of those nothing but the height matters.
/// </summary>
[CollectionBuilder(typeof(Items), nameof(These))]
internal sealed class Items : IEnumerable<Placed>
{
    private readonly Func<IEnumerable<Placed>>? _own;
    private readonly Sequence<Items> _parts;
    private readonly double _x;
    private readonly double _y;

    private Items(Func<IEnumerable<Placed>>? own, Sequence<Items> parts, double x, double y, bool isEmpty) =>
        (_own, _parts, _x, _y, IsEmpty) = (own, parts, x, y, isEmpty);

    /// <summary>Nothing.</summary>
    public static Items None { get; } = new(null, [], 0, 0, true);

    /// <summary>Whether nothing is painted.</summary>
    public bool IsEmpty { get; }

    /// <summary>Items that are there already.</summary>
    public static Items These(ReadOnlySpan<Placed> items)
    {
        var all = Sequence.Of(items);
        return all.Count == 0 ? None : new Items(() => all, [], 0, 0, false);
    }

    /// <summary>Items that are worked out later; some.</summary>
    public static Items Later(Func<IEnumerable<Placed>> items) => new(items, [], 0, 0, false);

    /// <summary>One after the other.</summary>
    public static Items Joined(Sequence<Items> parts) => new(null, parts, 0, 0, parts.All(part => part.IsEmpty));

    public static implicit operator Items(Sequence<Placed> items) => items.Count == 0 ? None : Later(() => items);

    /// <summary>The same elsewhere.</summary>
    public Items Moved(double x, double y) => IsEmpty ? this : new Items(_own, _parts, _x + x, _y + y, false);

    public IEnumerator<Placed> GetEnumerator()
    {
        var all = new List<Placed>();
        AddTo(all, 0, 0);
        return all.GetEnumerator();
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private void AddTo(List<Placed> all, double x, double y)
    {
        (x, y) = (x + _x, y + _y);
        foreach (var part in _parts)
        {
            part.AddTo(all, x, y);
        }

        foreach (var item in _own?.Invoke() ?? [])
        {
            all.Add(x == 0 && y == 0 ? item : item.Moved(x, y));
        }
    }
}
