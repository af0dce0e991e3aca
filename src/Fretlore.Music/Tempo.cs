using System.Globalization;

namespace Fretlore.Music;

/// <summary>A tempo as printed: so many of one note value a minute.</summary>
/// <param name="Beat">The value that is counted, such as a dotted quarter.</param>
/// <param name="PerMinute">Beats a minute, above 0.</param>
public readonly record struct Tempo(NoteValue Beat, decimal PerMinute)
{
    public static Tempo Default => new(new NoteValue(ValueBase.Quarter), 120);

    /// <summary>Seconds one quarter note lasts.</summary>
    public double SecondsPerQuarter => 60.0 / ((double)PerMinute * Beat.Length.ToDouble());

    /// <summary>Quarter notes a minute.</summary>
    public double QuartersPerMinute => 60.0 / SecondsPerQuarter;

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Beat.Base}{new string('.', Beat.Dots)} = {PerMinute}");
}
