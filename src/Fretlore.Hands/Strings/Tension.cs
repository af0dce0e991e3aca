namespace Fretlore.Hands.Strings;

/// <summary>A pull along a string.</summary>
/// <param name="PoundsForce">In pounds of force (lbf).</param>
/// <remarks>An immutable value type; <c>default</c> is no pull.</remarks>
public readonly record struct Tension(double PoundsForce) : IComparable<Tension>
{
    /// <summary>Newtons in a pound of force, exactly (0.45359237 kg at 9.80665 m/s^2).</summary>
    public const double NewtonsPerPoundForce = 0.45359237 * 9.80665;

    // Standard gravity in inches per second squared as the string trade rounds it; the unit weights are made for it.
    private const double Gravity = 386.4;

    public double Newtons => PoundsForce * NewtonsPerPoundForce;

    public static Tension FromNewtons(double newtons) => new(newtons / NewtonsPerPoundForce);

    /// <summary>The tension at which a string sounds a frequency: T = UW (2 L F)^2 / 386.4.</summary>
    /// <param name="unitWeight">Pounds per inch.</param>
    /// <param name="lengthMillimetres">Vibrating length.</param>
    /// <param name="hertz">Fundamental frequency.</param>
    public static Tension At(double unitWeight, double lengthMillimetres, double hertz)
    {
        var twiceLengthTimesFrequency = 2 * (lengthMillimetres / 25.4) * hertz;
        return new Tension(unitWeight * twiceLengthTimesFrequency * twiceLengthTimesFrequency / Gravity);
    }

    /// <summary>The frequency a string sounds at this tension: the same law, solved for F.</summary>
    public double HertzOf(double unitWeight, double lengthMillimetres) =>
        Math.Sqrt(PoundsForce * Gravity / unitWeight) / (2 * (lengthMillimetres / 25.4));

    public int CompareTo(Tension other) => PoundsForce.CompareTo(other.PoundsForce);

    public static Tension operator +(Tension a, Tension b) => new(a.PoundsForce + b.PoundsForce);

    public static Tension operator *(Tension tension, double times) => new(tension.PoundsForce * times);

    public static bool operator <(Tension a, Tension b) => a.CompareTo(b) < 0;

    public static bool operator >(Tension a, Tension b) => a.CompareTo(b) > 0;

    public static bool operator <=(Tension a, Tension b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Tension a, Tension b) => a.CompareTo(b) >= 0;
}
