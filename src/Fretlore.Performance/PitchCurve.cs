using Fretlore.Music;

namespace Fretlore.Performance;

/// <summary>One change of pitch within a note.</summary>
/// <param name="Start">Seconds from the note's onset.</param>
/// <param name="End">Seconds from the note's onset, after <paramref name="Start"/>.</param>
/// <param name="FromCents">Cents from the note's own pitch before it.</param>
/// <param name="ToCents">Cents from the note's own pitch after it.</param>
/// <param name="OverFrets">True for a glide, which sounds fret by fret; false for a bend, which is smooth.</param>
public readonly record struct PitchMove(double Start, double End, double FromCents, double ToCents, bool OverFrets = false);

/// <summary>A stretch of vibrato within a note.</summary>
/// <param name="Start">Seconds from the note's onset.</param>
/// <param name="End">Seconds from the note's onset.</param>
/// <param name="DepthCents">Signed: a plain string is pushed up and comes back; a bent one is let down and pushed up again.</param>
/// <param name="Hertz">Swings a second.</param>
public readonly record struct VibratoStretch(double Start, double End, double DepthCents, double Hertz);

/// <summary>How far a note is from its own pitch, in cents, over its time.</summary>
/// <param name="StartCents">At the onset; above 0 when bent before it is picked.</param>
/// <param name="Moves">In order of time, not overlapping; between them the pitch rests where the last one ended.</param>
/// <param name="Vibrato">In order of time.</param>
public sealed record PitchCurve(double StartCents, ValueList<PitchMove> Moves, ValueList<VibratoStretch> Vibrato)
{
    public static PitchCurve Flat { get; } = new(0, [], []);

    /// <summary>True when the note keeps its own pitch all the time.</summary>
    public bool IsFlat => StartCents == 0 && Moves.Count == 0 && Vibrato.Count == 0;

    /// <summary>The furthest it goes from the note's own pitch, in cents, as a bound.</summary>
    public double Reach => Moves.Select(m => Math.Max(Math.Abs(m.FromCents), Math.Abs(m.ToCents))).Append(Math.Abs(StartCents)).Max()
        + Vibrato.Select(v => Math.Abs(v.DepthCents)).Append(0).Max();

    /// <summary>Cents from the note's own pitch at a time in seconds from its onset.</summary>
    public double CentsAt(double seconds)
    {
        var cents = StartCents;
        foreach (var move in Moves)
        {
            if (seconds < move.Start) break;
            cents = seconds >= move.End ? move.ToCents : Between(move, (seconds - move.Start) / (move.End - move.Start));
        }
        foreach (var stretch in Vibrato)
        {
            if (seconds < stretch.Start || seconds >= stretch.End) continue;
            cents += stretch.DepthCents * 0.5 * (1 - Math.Cos(2 * Math.PI * stretch.Hertz * (seconds - stretch.Start)));
        }
        return cents;
    }

    /// <summary>The same curve seen from a later onset.</summary>
    public PitchCurve From(double seconds) => IsFlat || seconds == 0 ? this : new PitchCurve(
        StartCents,
        Moves.Select(m => m with { Start = m.Start - seconds, End = m.End - seconds }).ToValueList(),
        Vibrato.Select(v => v with { Start = v.Start - seconds, End = v.End - seconds }).ToValueList());

    private static double Between(PitchMove move, double share)
    {
        var distance = move.ToCents - move.FromCents;
        // A finger starts and ends gently; a glide passes one fret after another at an even pace.
        return move.OverFrets
            ? move.FromCents + Math.CopySign(100 * Math.Floor(Math.Abs(distance) / 100 * share), distance)
            : move.FromCents + distance * 0.5 * (1 - Math.Cos(Math.PI * share));
    }
}
