using System.Collections.Immutable;
using Fretlore.Guitar;

namespace Fretlore.Hands.Strings;

/// <summary>Steel music wire as plain strings are made of: strength, stiffness, and what a bend asks of the finger.</summary>
public static class MusicWire
{
    /// <summary>Young's modulus in pascals (the value of the worked examples; steel wire is between 195 and 210 GPa).</summary>
    private const double YoungsModulus = 200e9;

    // Diameter in thousandths of an inch; least and greatest tensile strength in thousands of pounds per square inch (ASTM A228).
    private static readonly ImmutableArray<(int Diameter, int Least, int Greatest)> Strengths =
    [
        (7, 407, 449), (8, 399, 441), (9, 393, 434), (10, 387, 428), (11, 382, 422), (12, 377, 417), (13, 373, 412), (14, 369, 408),
        (15, 365, 404), (16, 362, 400), (18, 356, 393), (20, 350, 387), (22, 345, 382), (24, 341, 377), (26, 337, 373),
    ];

    /// <summary>Between which tensions a plain string breaks; null for a wound one, whose core is not published.</summary>
    /// <remarks>Between two diameters of the standard the strength is taken in proportion.</remarks>
    public static (Tension Least, Tension Greatest)? BreakingLoad(GuitarString wire)
    {
        if (wire.Make != StringMake.Plain) return null;
        var diameter = wire.GaugeTenThousandths / 10.0;
        var above = 1;
        while (above < Strengths.Length - 1 && Strengths[above].Diameter < diameter) above++;
        var (from, to) = (Strengths[above - 1], Strengths[above]);
        var share = (diameter - from.Diameter) / (to.Diameter - from.Diameter);
        var area = Math.PI * wire.Gauge * wire.Gauge / 4;
        return (new Tension((from.Least + share * (to.Least - from.Least)) * 1000 * area),
            new Tension((from.Greatest + share * (to.Greatest - from.Greatest)) * 1000 * area));
    }

    /// <summary>Inharmonicity of a plain string, B = pi^3 E d^4 / (64 T L^2); partial n is at n f0 sqrt(1 + B n^2). Null for a wound string.</summary>
    public static double? Inharmonicity(GuitarString wire, double lengthMillimetres, Tension tension)
    {
        if (wire.Make != StringMake.Plain) return null;
        var length = lengthMillimetres / 1000;
        return Math.Pow(Math.PI, 3) * YoungsModulus * Math.Pow(wire.Diameter, 4) / (64 * tension.Newtons * length * length);
    }

    /// <summary>How many cents partial n of a plain string is sharp of n times the fundamental.</summary>
    public static double PartialSharpCents(double inharmonicity, int partial) =>
        600 * Math.Log2((1 + inharmonicity * partial * partial) / (1 + inharmonicity));

    /// <summary>Tension when a string is pulled up by some semitones: f goes with the square root of T, so T grows by 2^(n/6).</summary>
    public static Tension Bent(Tension tension, double semitones) => tension * Math.Pow(2, semitones / 6);

    /// <summary>What a finger pushes to bend a plain string at a fret, and how far; null for a wound string.</summary>
    /// <param name="wire">The string.</param>
    /// <param name="scaleLength">Nut to bridge in millimetres.</param>
    /// <param name="fromNut">Nut to the fret in millimetres.</param>
    /// <param name="tension">At rest.</param>
    /// <param name="semitones">How far up, above 0.</param>
    /// <remarks>
    /// From Hooke's law for a wire held at nut and bridge: pushed aside by d, its two parts grow to sqrt(l^2 + d^2), the tension by E A times the strain, and
    /// the finger holds 2 components of it. The string behind nut and saddle also gives, so that a real guitar asks for a longer way; the sounding
    /// part's own growth and lighter weight by length are in it.
    /// </remarks>
    public static (double Newtons, double Millimetres)? BendPush(
        GuitarString wire, double scaleLength, double fromNut, Tension tension, double semitones)
    {
        if (wire.Make != StringMake.Plain) return null;
        var (behind, sounding) = (fromNut / 1000, (scaleLength - fromNut) / 1000);
        var whole = behind + sounding;
        var stiffness = YoungsModulus * Math.PI * wire.Diameter * wire.Diameter / 4;
        var wanted = Math.Pow(2, semitones / 12);

        double Strain(double aside) => (Hypotenuse(behind, aside) + Hypotenuse(sounding, aside)) / whole - 1;
        double Pull(double aside) => tension.Newtons + stiffness * Strain(aside);
        double PitchRatio(double aside) =>
            sounding / Hypotenuse(sounding, aside) * Math.Sqrt(Pull(aside) / tension.Newtons * (1 + Strain(aside)));

        var (low, high) = (0.0, whole);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (PitchRatio(middle) < wanted) low = middle;
            else high = middle;
        }
        var push = Pull(high) * (high / Hypotenuse(behind, high) + high / Hypotenuse(sounding, high));
        return (push, high * 1000);
    }

    private static double Hypotenuse(double length, double aside) => Math.Sqrt(length * length + aside * aside);
}
