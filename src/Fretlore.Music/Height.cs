namespace Fretlore.Music;

/// <summary>A pitch before it is spelled: the equal-tempered semitone that sounds, by its MIDI number.</summary>
/// <param name="Midi">Semitones above C-1; 60 is middle C, 69 is A4.</param>
/// <remarks>A string and a fret give a height; its spelling depends on the music around it. An immutable value type.</remarks>
public readonly record struct Height(int Midi) : IComparable<Height>
{
    /// <summary>0 (C) to 11 (B).</summary>
    public int PitchClass => NoteName.Wrap(Midi, 12);

    /// <summary>Frequency in hertz by equal temperament (ISO 16: A4 = 440 Hz).</summary>
    public double Hertz(double a4 = 440) => a4 * Math.Pow(2, (Midi - 69) / 12.0);

    /// <summary>This height written with the given name; the name's pitch class must be this height's.</summary>
    public Pitch Spell(NoteName name)
    {
        if (name.PitchClass != PitchClass) throw new ArgumentException($"{name} does not sound as pitch class {PitchClass}.", nameof(name));
        var natural = Midi - name.Alteration;
        return new Pitch(name, (int)Math.Floor(natural / 12.0) - 1);
    }

    public int CompareTo(Height other) => Midi.CompareTo(other.Midi);

    public static Height operator +(Height height, int semitones) => new(height.Midi + semitones);

    public static Height operator -(Height height, int semitones) => new(height.Midi - semitones);

    public static int operator -(Height a, Height b) => a.Midi - b.Midi;

    public static bool operator <(Height a, Height b) => a.Midi < b.Midi;

    public static bool operator >(Height a, Height b) => a.Midi > b.Midi;

    public static bool operator <=(Height a, Height b) => a.Midi <= b.Midi;

    public static bool operator >=(Height a, Height b) => a.Midi >= b.Midi;
}
