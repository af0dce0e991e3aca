using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Hands.Strings;

/// <summary>One string on a guitar, tuned.</summary>
/// <param name="Number">Which string.</param>
/// <param name="Pitch">What it sounds open, without capo.</param>
/// <param name="Gauge">The string that is on.</param>
/// <param name="Tension">How hard it pulls.</param>
/// <param name="Length">Nut to bridge in millimetres.</param>
public sealed record TunedString(StringNumber Number, Pitch Pitch, GuitarString Gauge, Tension Tension, double Length)
{
    /// <summary>Tension as a share of the least at which it may break; null for a wound string.</summary>
    public double? ShareOfBreaking => MusicWire.BreakingLoad(Gauge) is { } load ? Tension.PoundsForce / load.Least.PoundsForce : null;

    /// <summary>See <see cref="MusicWire.Inharmonicity"/>.</summary>
    public double? Inharmonicity => MusicWire.Inharmonicity(Gauge, Length, Tension);

    /// <summary>Push in newtons and way in millimetres of a bend up a whole step at the twelfth fret; null for a wound string.</summary>
    public (double Newtons, double Millimetres)? WholeStepBend =>
        MusicWire.BendPush(Gauge, Length, NeckGeometry.FromNut(Length, 12), Tension, semitones: 2);
}

/// <summary>Gauges for a tuning, with tensions.</summary>
/// <param name="Strings">String 1 first.</param>
public sealed record StringSet(ImmutableArray<TunedString> Strings)
{
    /// <summary>What all strings together pull on the neck.</summary>
    public Tension Load => Strings.Aggregate(new Tension(0), (sum, next) => sum + next.Tension);

    /// <param name="tuning">Open strings without capo.</param>
    /// <param name="geometry">As many strings as the tuning.</param>
    /// <param name="highToLow">A string for each, string 1 first.</param>
    public static StringSet Of(Tuning tuning, NeckGeometry geometry, ImmutableArray<GuitarString> highToLow)
    {
        if (highToLow.Length != tuning.StringCount) throw new ArgumentException("One gauge for each string.", nameof(highToLow));
        var strings = ImmutableArray.CreateBuilder<TunedString>(highToLow.Length);
        for (var i = 1; i <= highToLow.Length; i++)
        {
            strings.Add(Tune(new StringNumber(i), tuning, geometry, highToLow[i - 1]));
        }
        return new StringSet(strings.MoveToImmutable());
    }

    /// <summary>The gauges that come nearest to a feel, by ratio of tensions.</summary>
    /// <remarks>Plain strings up to .020 and wound ones above, where both are made (common practice: a plain third).</remarks>
    public static StringSet For(Tuning tuning, NeckGeometry geometry, StringFeel feel)
    {
        var strings = ImmutableArray.CreateBuilder<TunedString>(tuning.StringCount);
        for (var i = 1; i <= tuning.StringCount; i++)
        {
            var number = new StringNumber(i);
            var target = feel.Target(number);
            strings.Add(UnitWeightTable.All
                .Where(IsUsual)
                .Select(gauge => Tune(number, tuning, geometry, gauge))
                .MinBy(tuned => Math.Abs(Math.Log(tuned.Tension.PoundsForce / target.PoundsForce)))!);
        }
        return new StringSet(strings.MoveToImmutable());
    }

    private static bool IsUsual(GuitarString gauge) => gauge.Make == StringMake.Plain == (gauge.GaugeTenThousandths <= 200);

    private static TunedString Tune(StringNumber number, Tuning tuning, NeckGeometry geometry, GuitarString gauge)
    {
        var length = geometry.ScaleLength(number);
        var pitch = tuning[number];
        return new TunedString(number, pitch, gauge, Tension.At(gauge.UnitWeight, length, pitch.Height.Hertz()), length);
    }
}
