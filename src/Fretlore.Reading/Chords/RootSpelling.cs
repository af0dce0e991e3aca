using Fretlore.Music;
using Fretlore.Music.Chords;

namespace Fretlore.Reading.Chords;

/// <summary>How the root of a chord is written: by the key when there is one, else as guitarists usually write it.</summary>
internal static class RootSpelling
{
    // C C# D Eb E F F# G Ab A Bb B on the line of fifths (common practice).
    private static ReadOnlySpan<int> UsualFifths => [0, 7, 2, -3, 4, -1, 6, 1, -4, 3, -2, 5];

    internal static NoteName Of(int pitchClass, ChordFamily? family, Key? key)
    {
        if (key is { } known)
        {
            var name = InKey(pitchClass, known);
            // In minor the tritone's power chord is the flat fifth's (Bb5 in E minor); only diminished chords stand on the sharp fourth.
            var onTritone = name.Fifths == known.Tonic.Fifths + 6;
            return onTritone && known.IsMinor && family is not { Fifth: 6 } ? NoteName.FromFifths(name.Fifths - 12) : name;
        }
        // G#m, not Abm: its notes need five sharps instead of seven flats.
        if (pitchClass == 8 && family is { Third: 3 }) return NoteName.FromFifths(8);
        return NoteName.FromFifths(UsualFifths[pitchClass]);
    }

    /// <summary>From five fifths below the tonic (flat second) to six above (sharp fourth).</summary>
    internal static NoteName InKey(int pitchClass, Key key)
    {
        var lowest = key.Tonic.Fifths - 5;
        // The place at or above the lowest whose pitch class is the one asked for: fifths are seven semitones.
        var fifths = lowest + NoteName.Wrap(pitchClass * 7 - lowest, 12);
        return NoteName.FromFifths(fifths);
    }
}
