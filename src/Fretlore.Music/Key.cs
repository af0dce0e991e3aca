namespace Fretlore.Music;

/// <summary>The seven modes of the major scale, named as keys are.</summary>
public enum Mode
{
    Ionian,
    Dorian,
    Phrygian,
    Lydian,
    Mixolydian,
    Aeolian,
    Locrian,
}

/// <summary>A tonic with its mode; major is Ionian and minor is Aeolian.</summary>
/// <param name="Tonic">The key note.</param>
/// <param name="Mode">The mode.</param>
/// <param name="IsMajorMinor">True when named major or minor, so that it prints that way.</param>
public readonly record struct Key(NoteName Tonic, Mode Mode, bool IsMajorMinor = false)
{
    /// <summary>The key signature: sharps (positive) or flats (negative). D dorian is 0, G mixolydian is 0, A major is 3.</summary>
    public int Signature => Tonic.Fifths - ModeFifths(Mode);

    /// <summary>The seven notes from the tonic up.</summary>
    public ValueList<NoteName> Notes
    {
        get
        {
            var signature = Signature;
            var notes = new NoteName[7];
            for (var fifths = signature - 1; fifths <= signature + 5; fifths++)
            {
                var name = NoteName.FromFifths(fifths);
                notes[NoteName.Wrap((int)name.Step - (int)Tonic.Step, 7)] = name;
            }
            return new ValueList<NoteName>([.. notes]);
        }
    }

    /// <summary>True for the modes with a minor third.</summary>
    public bool IsMinor => Mode is Mode.Dorian or Mode.Phrygian or Mode.Aeolian or Mode.Locrian;

    /// <summary>Reads a mode by its name, or <c>major</c> and <c>minor</c>.</summary>
    public static bool TryParse(ReadOnlySpan<char> tonic, ReadOnlySpan<char> mode, out Key key)
    {
        key = default;
        if (!NoteName.TryParse(tonic, out var name)) return false;
        if (mode.IsEmpty || mode.Equals("major", StringComparison.OrdinalIgnoreCase))
        {
            key = new Key(name, Mode.Ionian, true);
            return true;
        }
        if (mode.Equals("minor", StringComparison.OrdinalIgnoreCase))
        {
            key = new Key(name, Mode.Aeolian, true);
            return true;
        }
        foreach (var candidate in Enum.GetValues<Mode>())
        {
            if (!mode.Equals(candidate.ToString(), StringComparison.OrdinalIgnoreCase)) continue;
            key = new Key(name, candidate);
            return true;
        }
        return false;
    }

    /// <summary>For example <c>A dorian</c>, <c>E minor</c>.</summary>
    public override string ToString() => Tonic + " " + (IsMajorMinor
        ? Mode == Mode.Ionian ? "major" : "minor"
        : Mode.ToString().ToLowerInvariant());

    // Where the mode's tonic stands on the line of fifths of its own signature: F C G D A E B from lydian to locrian.
    private static int ModeFifths(Mode mode) => mode switch
    {
        Mode.Lydian => -1,
        Mode.Ionian => 0,
        Mode.Mixolydian => 1,
        Mode.Dorian => 2,
        Mode.Aeolian => 3,
        Mode.Phrygian => 4,
        _ => 5,
    };
}
