using System.Globalization;
using System.Numerics;

namespace Fretlore.Music;

/// <summary>An exact length or place in musical time, counted in quarter notes.</summary>
/// <remarks>
/// A rational number in lowest terms; arithmetic is checked and never rounds. A quarter note is 1, an eighth 1/2, a
/// triplet eighth 1/3. <c>default</c> is zero. An immutable value type.
/// </remarks>
public readonly struct Beats : IEquatable<Beats>, IComparable<Beats>
{
    private readonly long numerator;
    private readonly long denominatorMinusOne;

    private Beats(long numerator, long denominator)
    {
        this.numerator = numerator;
        denominatorMinusOne = denominator - 1;
    }

    public static Beats Zero => default;

    public static Beats Whole => new(4, 1);

    public static Beats Quarter => new(1, 1);

    public long Numerator => numerator;

    /// <summary>Always positive.</summary>
    public long Denominator => denominatorMinusOne + 1;

    public bool IsZero => numerator == 0;

    public static Beats Of(long numerator, long denominator = 1)
    {
        if (denominator == 0) throw new ArgumentOutOfRangeException(nameof(denominator), "A denominator is not zero.");
        if (denominator < 0) (numerator, denominator) = (checked(-numerator), checked(-denominator));
        // Nearly all lengths are halves of halves; for them the divisor is a shift.
        if (BitOperations.IsPow2(denominator))
        {
            var shift = Math.Min(BitOperations.TrailingZeroCount(numerator), BitOperations.TrailingZeroCount(denominator));
            return new Beats(numerator >> shift, denominator >> shift);
        }
        var divisor = GreatestCommonDivisor(Math.Abs(numerator), denominator);
        return new Beats(numerator / divisor, denominator / divisor);
    }

    public double ToDouble() => (double)Numerator / Denominator;

    /// <summary>The remainder after taking as many whole <paramref name="length"/>s as fit; never negative.</summary>
    public Beats Modulo(Beats length)
    {
        var count = Floor(this / length);
        return this - length * count;
    }

    /// <summary>How many whole <paramref name="length"/>s fit, rounded down.</summary>
    public long WholeCount(Beats length) => Floor(this / length);

    public static Beats Min(Beats a, Beats b) => a < b ? a : b;

    public static Beats Max(Beats a, Beats b) => a > b ? a : b;

    public static Beats operator +(Beats a, Beats b) => a.denominatorMinusOne == b.denominatorMinusOne
        ? Of(checked(a.numerator + b.numerator), a.Denominator)
        : Of(checked(a.numerator * b.Denominator + b.numerator * a.Denominator), checked(a.Denominator * b.Denominator));

    public static Beats operator -(Beats a) => new(checked(-a.numerator), a.Denominator);

    public static Beats operator -(Beats a, Beats b) => a + -b;

    public static Beats operator *(Beats a, long times) => Of(checked(a.numerator * times), a.Denominator);

    public static Beats operator *(Beats a, Beats b) => Of(checked(a.numerator * b.numerator), checked(a.Denominator * b.Denominator));

    public static Beats operator /(Beats a, long parts) => Of(a.numerator, checked(a.Denominator * parts));

    public static Beats operator /(Beats a, Beats b) => Of(checked(a.numerator * b.Denominator), checked(a.Denominator * b.numerator));

    public static bool operator ==(Beats a, Beats b) => a.Equals(b);

    public static bool operator !=(Beats a, Beats b) => !a.Equals(b);

    public static bool operator <(Beats a, Beats b) => a.CompareTo(b) < 0;

    public static bool operator >(Beats a, Beats b) => a.CompareTo(b) > 0;

    public static bool operator <=(Beats a, Beats b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Beats a, Beats b) => a.CompareTo(b) >= 0;

    public int CompareTo(Beats other)
    {
        if (denominatorMinusOne == other.denominatorMinusOne) return numerator.CompareTo(other.numerator);
        return IsShort && other.IsShort
            ? (numerator * other.Denominator).CompareTo(other.numerator * Denominator)
            : ((Int128)numerator * other.Denominator).CompareTo((Int128)other.numerator * Denominator);
    }

    public bool Equals(Beats other) => numerator == other.numerator && denominatorMinusOne == other.denominatorMinusOne;

    public override bool Equals(object? obj) => obj is Beats other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(numerator, denominatorMinusOne);

    /// <summary>For example <c>3/2</c> or <c>4</c>, in quarter notes.</summary>
    public override string ToString() => Denominator == 1
        ? Numerator.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Numerator}/{Denominator}");

    // So that the product of two of them fits.
    private bool IsShort => numerator is >= int.MinValue and <= int.MaxValue && denominatorMinusOne < int.MaxValue;

    private static long Floor(Beats a) => a.numerator >= 0
        ? a.numerator / a.Denominator
        : -((-a.numerator + a.Denominator - 1) / a.Denominator);

    private static long GreatestCommonDivisor(long a, long b)
    {
        while (b != 0) (a, b) = (b, a % b);
        return a == 0 ? 1 : a;
    }
}
