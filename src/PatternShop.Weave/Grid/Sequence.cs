using System.Collections;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace PatternShop.Weave;

/// <summary>
/// An immutable list that is equal to another when its items are equal, one by one. A record that holds one
/// therefore compares by value, which a record holding an <see cref="ImmutableArray{T}"/> does not.
/// </summary>
[CollectionBuilder(typeof(Sequence), nameof(Sequence.Of))]
public sealed class Sequence<T> : IReadOnlyList<T>, IEquatable<Sequence<T>>
{
    private readonly ImmutableArray<T> _items;

    internal Sequence(ImmutableArray<T> items) => _items = items;

    /// <summary>The sequence without items.</summary>
    public static Sequence<T> Empty { get; } = new([]);

    public int Count => _items.Length;

    public T this[int index] => _items[index];

    public bool Equals(Sequence<T>? other) =>
        other is not null && (ReferenceEquals(this, other) || _items.AsSpan().SequenceEqual(other._items.AsSpan()));

    public override bool Equals(object? obj) => Equals(obj as Sequence<T>);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in _items)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    public ImmutableArray<T>.Enumerator GetEnumerator() => _items.GetEnumerator();

    IEnumerator<T> IEnumerable<T>.GetEnumerator() => ((IEnumerable<T>)_items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<T>)_items).GetEnumerator();

    /// <summary>The items as a span, without copying.</summary>
    public ReadOnlySpan<T> AsSpan() => _items.AsSpan();

    public override string ToString() => "[" + string.Join(", ", _items) + "]";
}

/// <summary>Makes <see cref="Sequence{T}"/> values; collection expressions use it.</summary>
public static class Sequence
{
    public static Sequence<T> Of<T>(ReadOnlySpan<T> items) => items.IsEmpty ? Sequence<T>.Empty : new([.. items]);

    public static Sequence<T> ToSequence<T>(this IEnumerable<T> items) => new([.. items]);
}
