using Fretlore.Music;
using Fretlore.Reading.Chords;

namespace Fretlore.Reading.Spelling;

/// <summary>Writes pitch classes by the line of fifths: as the chord of the moment has them, else by the key, chromatic notes by where they go.</summary>
/// <remarks>One for each bar of a part, so that a note is written alike within the bar while the chord stays.</remarks>
internal sealed class Speller(Key key)
{
    private readonly PitchClassSet inKey = KeyNotes.Of(key);
    private readonly NoteName?[] decided = new NoteName?[12];
    private ChordReading? chord;

    /// <param name="height">What sounds.</param>
    /// <param name="local">The chord it sounds in, or null.</param>
    /// <param name="next">The note that follows in its line, or null.</param>
    internal Pitch Spell(Height height, ChordReading? local, Height? next)
    {
        if (!Equals(local?.Symbol, chord?.Symbol))
        {
            chord = local;
            Array.Clear(decided);
        }
        var pitchClass = height.PitchClass;
        var name = decided[pitchClass] ??= Choose(pitchClass, next);
        return height.Spell(name);
    }

    private NoteName Choose(int pitchClass, Height? next)
    {
        if (chord is not null)
        {
            foreach (var note in chord.Notes)
            {
                // Double signs are for theory: on the page the key's plain name is read faster.
                if (note.PitchClass == pitchClass && Math.Abs(note.Alteration) < 2) return note;
            }
        }
        var usual = RootSpelling.InKey(pitchClass, key);
        if (inKey.Contains(pitchClass) || next is not { } goal || !inKey.Contains(goal.PitchClass)) return usual;
        var step = NoteName.Wrap(goal.PitchClass - pitchClass, 12);
        var goalFifths = RootSpelling.InKey(goal.PitchClass, key).Fifths;
        var chromatic = step switch
        {
            1 => NoteName.FromFifths(goalFifths + 5), // a raised note rises
            11 => NoteName.FromFifths(goalFifths - 5), // a lowered note falls
            _ => usual,
        };
        return Math.Abs(chromatic.Alteration) < 2 ? chromatic : usual;
    }
}
