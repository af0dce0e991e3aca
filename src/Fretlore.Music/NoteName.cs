namespace Fretlore.Music;

/// <summary>The seven letters of staff notation.</summary>
public enum Step
{
    C,
    D,
    E,
    F,
    G,
    A,
    B,
}

/// <summary>A note's letter and alteration without its octave, such as F# or Bb.</summary>
/// <param name="Step">The letter.</param>
/// <param name="Alteration">Semitones up (sharps) or down (flats); -2 to 2 in ordinary writing.</param>
/// <remarks>An immutable value type; <c>default</c> is C.</remarks>
public readonly record struct NoteName(Step Step, int Alteration = 0)
{
    private static ReadOnlySpan<int> StepSemitones => [0, 2, 4, 5, 7, 9, 11];

    private static ReadOnlySpan<int> StepFifths => [0, 2, 4, -1, 1, 3, 5];

    /// <summary>Semitones of the natural letter above C, 0 to 11.</summary>
    public static int Semitones(Step step) => StepSemitones[(int)step];

    /// <summary>0 (C) to 11 (B).</summary>
    public int PitchClass => Wrap(Semitones(Step) + Alteration, 12);

    /// <summary>Place on the line of fifths: C is 0, G is 1, F is -1, F# is 6, Bb is -2.</summary>
    public int Fifths => StepFifths[(int)Step] + 7 * Alteration;

    public static NoteName FromFifths(int fifths)
    {
        var alteration = (int)Math.Floor((fifths + 1) / 7.0);
        var natural = fifths - 7 * alteration; // -1 to 5: F C G D A E B
        ReadOnlySpan<Step> line = [Step.F, Step.C, Step.G, Step.D, Step.A, Step.E, Step.B];
        return new NoteName(line[natural + 1], alteration);
    }

    /// <summary>The name a diatonic distance and a chromatic distance away.</summary>
    public NoteName Transpose(Interval interval) => FromFifths(Fifths + interval.Fifths);

    /// <summary>Reads <c>C</c>, <c>F#</c>, <c>Bb</c>, <c>Ebb</c>, <c>Gx</c> is not read. Upper or lower case letter.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out NoteName name)
    {
        name = default;
        if (text.IsEmpty) return false;
        var letter = "CDEFGAB".IndexOf(char.ToUpperInvariant(text[0]), StringComparison.Ordinal);
        if (letter < 0) return false;
        var alteration = 0;
        foreach (var sign in text[1..])
        {
            if (sign is '#' or '♯' && alteration >= 0) alteration++;
            else if (sign is 'b' or '♭' && alteration <= 0) alteration--;
            else return false;
        }
        if (Math.Abs(alteration) > 2) return false;
        name = new NoteName((Step)letter, alteration);
        return true;
    }

    /// <summary>In letters, <c>#</c> and <c>b</c>: <c>F#</c>, <c>Bb</c>.</summary>
    public override string ToString() => Step + new string(Alteration < 0 ? 'b' : '#', Math.Abs(Alteration));

    /// <summary>The remainder that is never negative.</summary>
    public static int Wrap(int value, int modulus) => (value % modulus + modulus) % modulus;
}
