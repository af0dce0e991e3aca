using System.Numerics;

namespace Fretlore.Music;

/// <summary>A set of the twelve pitch classes, without octave or spelling.</summary>
/// <param name="Bits">Bit 0 is C, bit 11 is B; or, when counted from a root, bit 0 is the root and bit n is n semitones above it.</param>
/// <remarks>An immutable value type; <c>default</c> is the empty set.</remarks>
public readonly record struct PitchClassSet(int Bits)
{
    private const int AllBits = 0xFFF;

    public static PitchClassSet Chromatic => new(AllBits);

    public int Count => BitOperations.PopCount((uint)Bits);

    public bool IsEmpty => Bits == 0;

    public static PitchClassSet Of(params ReadOnlySpan<int> pitchClasses)
    {
        var bits = 0;
        foreach (var pitchClass in pitchClasses) bits |= 1 << NoteName.Wrap(pitchClass, 12);
        return new PitchClassSet(bits);
    }

    public static PitchClassSet Of(ReadOnlySpan<Height> heights)
    {
        var bits = 0;
        foreach (var height in heights) bits |= 1 << height.PitchClass;
        return new PitchClassSet(bits);
    }

    public bool Contains(int pitchClass) => (Bits >> pitchClass & 1) != 0;

    /// <summary>True when every member is also in <paramref name="other"/>.</summary>
    public bool IsWithin(PitchClassSet other) => (Bits & ~other.Bits) == 0;

    public PitchClassSet With(int pitchClass) => new(Bits | 1 << pitchClass);

    public PitchClassSet Without(int pitchClass) => new(Bits & ~(1 << pitchClass));

    public PitchClassSet Except(PitchClassSet other) => new(Bits & ~other.Bits);

    /// <summary>The set seen from a root: bit 0 is the root.</summary>
    /// <param name="root">0 to 11.</param>
    public PitchClassSet From(int root) => new((Bits >> root | Bits << (12 - root)) & AllBits);

    /// <summary>The set moved up.</summary>
    /// <param name="semitones">0 to 11.</param>
    public PitchClassSet Up(int semitones) => new((Bits << semitones | Bits >> (12 - semitones)) & AllBits);

    public static PitchClassSet operator |(PitchClassSet a, PitchClassSet b) => new(a.Bits | b.Bits);

    public static PitchClassSet operator &(PitchClassSet a, PitchClassSet b) => new(a.Bits & b.Bits);

    /// <summary>Members from 0 up.</summary>
    public Enumerator GetEnumerator() => new(Bits);

    public override string ToString()
    {
        var members = new List<int>();
        foreach (var member in this) members.Add(member);
        return $"{{{string.Join(' ', members)}}}";
    }

    /// <summary>Goes through a set's members from 0 up.</summary>
    public struct Enumerator(int bits)
    {
        private int left = bits;

        public int Current { readonly get; private set; }

        public bool MoveNext()
        {
            if (left == 0) return false;
            Current = BitOperations.TrailingZeroCount((uint)left);
            left &= left - 1;
            return true;
        }
    }
}
