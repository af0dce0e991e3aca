using System.Globalization;

namespace Fretlore.Music;

/// <summary>A spelled pitch: letter, alteration and octave, such as F#3.</summary>
/// <param name="Name">Letter and alteration.</param>
/// <param name="Octave">Scientific octave of the letter: C4 is middle C, and B#3 sounds as C4.</param>
/// <remarks>An immutable value type; <c>default</c> is C0.</remarks>
public readonly record struct Pitch(NoteName Name, int Octave)
{
    /// <summary>The MIDI number of what sounds.</summary>
    public int Midi => 12 * (Octave + 1) + NoteName.Semitones(Name.Step) + Name.Alteration;

    public Height Height => new(Midi);

    /// <summary>Staff position: 0 for C0, one more a letter.</summary>
    public int DiatonicNumber => 7 * Octave + (int)Name.Step;

    public Pitch Transpose(Interval interval)
    {
        var diatonic = DiatonicNumber + interval.Steps;
        var octave = (int)Math.Floor(diatonic / 7.0);
        var step = (Step)(diatonic - 7 * octave);
        var natural = new Pitch(new NoteName(step), octave);
        return natural with { Name = new NoteName(step, Midi + interval.Semitones - natural.Midi) };
    }

    /// <summary>Reads <c>E2</c>, <c>F#3</c>, <c>Bb1</c>, <c>A-1</c>.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out Pitch pitch)
    {
        pitch = default;
        var digits = 0;
        while (digits < text.Length && text[digits] is not ('-' or (>= '0' and <= '9'))) digits++;
        if (!NoteName.TryParse(text[..digits], out var name)) return false;
        if (!int.TryParse(text[digits..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var octave)) return false;
        if (octave is < -1 or > 9) return false;
        pitch = new Pitch(name, octave);
        return true;
    }

    public override string ToString() => Name + Octave.ToString(CultureInfo.InvariantCulture);
}
