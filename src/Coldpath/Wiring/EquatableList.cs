using System.Collections;

namespace Coldpath.Wiring;

/// <summary>An immutable list that compares by its items, so that records holding one compare by value.</summary>
public sealed class EquatableList<T>(IEnumerable<T> items) : IReadOnlyList<T>, IEquatable<EquatableList<T>>
{
    private readonly T[] items = items.ToArray();

    public T this[int index] => items[index];

    public int Count => items.Length;

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    public bool Equals(EquatableList<T>? other) => other is not null && items.SequenceEqual(other.items);

    public override bool Equals(object? obj) => Equals(obj as EquatableList<T>);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in items)
            hash.Add(item);
        return hash.ToHashCode();
    }
}
