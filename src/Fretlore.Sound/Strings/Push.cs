using Fretlore.Performance;
using Fretlore.Score;

namespace Fretlore.Sound.Strings;

/// <summary>How a note is brought into the string: how hard, where along it, how bright, and with how much noise.</summary>
/// <param name="Level">Height of the wave, 0 to about 1.</param>
/// <param name="Place">Share of the sounding length between the bridge and the pick.</param>
/// <param name="Brightness">Hertz above which the pick or finger rounds the wave off.</param>
/// <param name="Scratch">Level of noise against the wave.</param>
/// <param name="Stops">True when it stops what sounded before.</param>
internal readonly record struct Push(double Level, double Place, double Brightness, double Scratch, bool Stops)
{
    private const double OpenPlace = 0.13; // Of the open string: between two pickups (common practice).

    /// <param name="note">The note.</param>
    /// <param name="shortened">How many times shorter than the open string the sounding one is.</param>
    public static Push Of(PerformedNote note, double shortened)
    {
        var level = Math.Pow(note.Velocity / 127.0, 1.5);
        var place = Math.Clamp(OpenPlace * shortened, 0.04, 0.5);
        var picked = new Push(level, place, 1800 + 6000 * level, 0.06, true);
        if (note.Damping == Damping.Dead) return picked with { Level = level * 0.8, Brightness = 2500, Scratch = 0.5 };
        if (note.Damping == Damping.Palm) picked = picked with { Place = Math.Clamp(0.08 * shortened, 0.04, 0.5), Brightness = picked.Brightness * 0.6 };
        return note.Attack switch
        {
            Attack.HammerOn => new Push(level * 0.3, 0.5, 900, 0.1, false),
            Attack.PullOff => new Push(level * 0.3, 0.35, 2500, 0.02, false),
            Attack.HammerFromNowhere => new Push(level * 0.6, 0.5, 1200, 0.1, true),
            Attack.Tap => new Push(level * 0.7, 0.5, 1500, 0.1, false),
            Attack.Glide => new Push(0, 0.5, 900, 0, false),
            _ => note.Harmonic is { Kind: HarmonicKind.Pinch } ? picked with { Brightness = 9000, Scratch = 0.1 } : picked,
        };
    }

    /// <summary>Writes the wave an ideal pluck leaves in the string, rounded off, and what comes with it of noise.</summary>
    /// <param name="into">Where to write; long enough for <see cref="LengthOf"/>.</param>
    /// <param name="period">Samples of the stopped string's period.</param>
    /// <param name="partial">1, or the partial that a light touch leaves: then the wave repeats as often within the period.</param>
    /// <param name="noise">The note's own noise.</param>
    public void Write(Span<double> into, double period, int partial, ref Noise noise)
    {
        var keep = Math.Exp(-2 * Math.PI * Brightness / SampleRate.Hertz);
        double rounded = 0, twice = 0, sum = 0;
        for (var i = 0; i < into.Length; i++)
        {
            double wave = 0;
            if (i < period)
            {
                var turn = i / period * partial;
                turn -= Math.Floor(turn);
                // Two slopes that cancel over a turn, so that no steady part is left in the string.
                wave = turn < Place ? 1 - Place : -Place;
            }
            var scratch = Scratch * noise.Next() * Math.Exp(-i / 48.0);
            rounded = wave + scratch + keep * (rounded - wave - scratch);
            twice = rounded + keep * (twice - rounded);
            into[i] = Level * twice;
            sum += into[i];
        }
        // What sampling and noise leave of a steady part would die away slowest of all.
        foreach (ref var value in into) value -= sum / into.Length;
    }

    /// <summary>The partial a pinch with the thumb leaves: the one whose first node from the bridge is nearest to the pick.</summary>
    /// <param name="shortened">How many times shorter than the open string the sounding one is.</param>
    public static int PinchedPartial(double shortened) => Math.Clamp((int)Math.Round(1 / (OpenPlace * shortened)), 3, 8);

    /// <summary>Samples until nothing is added any more.</summary>
    public static int LengthOf(double period) => (int)period + 160;
}
