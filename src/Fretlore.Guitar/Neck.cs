using Fretlore.Music;

namespace Fretlore.Guitar;

/// <summary>Strings by frets of one instrument: tuning, capo, number of frets and scale length.</summary>
/// <param name="Tuning">Open strings without capo.</param>
/// <param name="Capo">The capo; it says what frets are counted from.</param>
/// <param name="FretCount">Frets on the neck, counted from the nut.</param>
/// <param name="ScaleLength">Vibrating length of the open string in millimetres; of the highest one where frets are fanned.</param>
public sealed record Neck(Tuning Tuning, Capo Capo = default, int FretCount = 24, double ScaleLength = 648)
{
    /// <summary>Of the lowest string where frets are fanned, in millimetres; null where all strings have one length.</summary>
    public double? LowScaleLength { get; init; }

    public int StringCount => Tuning.StringCount;

    /// <summary>The highest fret that can be written.</summary>
    public Fret HighestFret => new(FretCount - Capo.CountedFrom);

    /// <summary>What sounds at a written fret.</summary>
    public Height Sounding(StringNumber number, Fret fret) => Tuning[number].Height + Capo.FromNut(number, fret);

    /// <summary>What the string sounds open, at the capo where it is covered.</summary>
    public Height Open(StringNumber number) => Sounding(number, Fret.Open);

    /// <summary>True for an open string and for a fret where a finger can stop it.</summary>
    public bool Has(StringNumber number, Fret fret) =>
        Tuning.Has(number) && fret.Number >= 0 && fret.Number <= HighestFret.Number && !Capo.IsBehind(number, fret);

    /// <summary>The written fret at which a string sounds a height; null where it does not.</summary>
    public Fret? FretOf(StringNumber number, Height height) =>
        Tuning.Has(number) && height - Open(number) is >= 0 and var above && Capo.Written(number, above) is var fret && Has(number, fret) ? fret : null;

    /// <summary>Semitones from one written fret of a string up to another.</summary>
    public int Semitones(StringNumber number, Fret from, Fret to) => Capo.FromNut(number, to) - Capo.FromNut(number, from);

    /// <summary>The written fret some semitones above another one, which may be beyond the end of the neck; null where the string has none.</summary>
    public Fret? Above(StringNumber number, Fret from, int semitones) => Capo.AboveOpen(number, from) + semitones is >= 0 and var above ? Capo.Written(number, above) : null;

    /// <summary>Semitones from the stopped (or open) string up to the harmonic when it is touched at another written fret; null where no node is.</summary>
    public int? Harmonic(StringNumber number, Fret stopped, Fret touched) => HarmonicSeries.SemitonesAbove(Semitones(number, stopped, touched));
}
