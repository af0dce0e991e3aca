using Fretlore.Music;

namespace Fretlore.Guitar;

/// <summary>Strings by frets of one instrument: tuning, capo, number of frets and scale length.</summary>
/// <param name="Tuning">Open strings without capo.</param>
/// <param name="Capo">The fret the capo is at; 0 for none.</param>
/// <param name="FretCount">Frets on the neck, counted from the nut.</param>
/// <param name="ScaleLength">Vibrating length of the open string in millimetres.</param>
public sealed record Neck(Tuning Tuning, int Capo = 0, int FretCount = 24, double ScaleLength = 648)
{
    public int StringCount => Tuning.StringCount;

    /// <summary>The highest fret that can be written, counted from the capo.</summary>
    public Fret HighestFret => new(FretCount - Capo);

    /// <summary>What sounds at a fret counted from the capo.</summary>
    public Height Sounding(StringNumber number, Fret fret) => Tuning[number].Height + Capo + fret.Number;

    public bool Has(StringNumber number, Fret fret) => Tuning.Has(number) && fret.Number >= 0 && fret.Number <= HighestFret.Number;
}
