namespace Fretlore.Music;

/// <summary>The distance between two spelled pitches: letters crossed and semitones crossed.</summary>
/// <param name="Steps">Letters upwards: 0 unison, 1 second, 7 octave; negative downwards.</param>
/// <param name="Semitones">Semitones upwards; negative downwards.</param>
/// <remarks>An immutable value type; <c>default</c> is the perfect unison.</remarks>
public readonly record struct Interval(int Steps, int Semitones)
{
    /// <summary>Distance on the line of fifths: 1 for a perfect fifth, 0 for unison and octave.</summary>
    public int Fifths => 7 * Semitones - 12 * Steps;

    public static Interval Between(Pitch low, Pitch high) =>
        new(high.DiatonicNumber - low.DiatonicNumber, high.Midi - low.Midi);

    /// <summary>From one note name up to the next with the other name, less than an octave in letters.</summary>
    public static Interval Between(NoteName low, NoteName high)
    {
        var steps = NoteName.Wrap((int)high.Step - (int)low.Step, 7);
        var octave = (int)high.Step < (int)low.Step ? 12 : 0;
        var semitones = NoteName.Semitones(high.Step) + high.Alteration - NoteName.Semitones(low.Step) - low.Alteration + octave;
        return new Interval(steps, semitones);
    }

    /// <summary>How far from major or perfect, in semitones: -1 for a minor third, 1 for a sharp fourth.</summary>
    public int Alteration => Semitones - MajorSemitones(Steps);

    /// <summary>As a degree of the major scale: <c>1</c>, <c>b3</c>, <c>#4</c>, <c>b7</c>, <c>9</c> for a compound second.</summary>
    public string ToDegree() => new string(Alteration < 0 ? 'b' : '#', Math.Abs(Alteration)) + (Steps + 1);

    /// <summary>The usual spelling of a number of semitones above a root: b2 2 b3 3 4 #4 5 b6 6 b7 7.</summary>
    /// <param name="semitones">0 to 11.</param>
    public static Interval Chromatic(int semitones)
    {
        ReadOnlySpan<int> steps = [0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6];
        return new Interval(steps[semitones], semitones);
    }

    private static int MajorSemitones(int steps)
    {
        var octaves = (int)Math.Floor(steps / 7.0);
        return NoteName.Semitones((Step)(steps - 7 * octaves)) + 12 * octaves;
    }

    public static Interval operator +(Interval a, Interval b) => new(a.Steps + b.Steps, a.Semitones + b.Semitones);

    public static Interval operator -(Interval a) => new(-a.Steps, -a.Semitones);
}
