using System.Collections.Immutable;
using Fretlore.Sound.Strings;

namespace Fretlore.Sound.Pieces;

/// <summary>All that a track remembers of what was played before a moment: to go on from there, and to see whether two tracks go on alike. Compared by value.</summary>
internal sealed class TrackMemory(ImmutableArray<double> numbers, ImmutableArray<StringNote> notes) : IEquatable<TrackMemory>
{
    public ImmutableArray<double> Numbers => numbers;

    public ImmutableArray<StringNote> Notes => notes;

    public bool Equals(TrackMemory? other) => ReferenceEquals(this, other)
        || (other is not null && numbers.AsSpan().SequenceEqual(other.Numbers.AsSpan()) && notes.AsSpan().SequenceEqual(other.Notes.AsSpan()));

    public override bool Equals(object? obj) => Equals(obj as TrackMemory);

    public override int GetHashCode() => HashCode.Combine(numbers.Length, notes.Length);
}
