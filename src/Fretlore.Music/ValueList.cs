using System.Collections;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Fretlore.Music;

/// <summary>An immutable list that is equal to another when all its items are.</summary>
/// <remarks><c>default</c> is the empty list. Made with a collection expression: <c>ValueList&lt;int&gt; a = [1, 2];</c></remarks>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Create))]
public readonly struct ValueList<T> : IReadOnlyList<T>, IEquatable<ValueList<T>>
{
    private readonly ImmutableArray<T> items;

    public ValueList(ImmutableArray<T> items) => this.items = items;

    public int Count => items.IsDefault ? 0 : items.Length;

    public T this[int index] => Items[index];

    /// <summary>The items as an array; never the default array.</summary>
    public ImmutableArray<T> Items => items.IsDefault ? [] : items;

    public ReadOnlySpan<T> AsSpan() => Items.AsSpan();

    public ImmutableArray<T>.Enumerator GetEnumerator() => Items.GetEnumerator();

    IEnumerator<T> IEnumerable<T>.GetEnumerator() => ((IEnumerable<T>)Items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable)Items).GetEnumerator();

    public bool Equals(ValueList<T> other) => Items.AsSpan().SequenceEqual(other.Items.AsSpan(), EqualityComparer<T>.Default);

    public override bool Equals(object? obj) => obj is ValueList<T> other && Equals(other);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in Items) hash.Add(item);
        return hash.ToHashCode();
    }

    public override string ToString() => $"[{string.Join(", ", Items)}]";

    public static bool operator ==(ValueList<T> left, ValueList<T> right) => left.Equals(right);

    public static bool operator !=(ValueList<T> left, ValueList<T> right) => !left.Equals(right);
}

/// <summary>Makes <see cref="ValueList{T}"/> values.</summary>
public static class ValueList
{
    public static ValueList<T> Create<T>(ReadOnlySpan<T> items) => new([.. items]);

    public static ValueList<T> ToValueList<T>(this IEnumerable<T> items) => new([.. items]);
}
