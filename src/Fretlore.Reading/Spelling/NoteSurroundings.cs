namespace Fretlore.Reading.Spelling;

/// <summary>All that decides a note's name but the local key; notes with the same surroundings share one row of costs.</summary>
/// <param name="PitchClass">0 to 11.</param>
/// <param name="Signature">The key signature it stands under.</param>
/// <param name="NextSignature">The one that comes within a few bars, or the same.</param>
/// <param name="ChordRoot">Pitch class of the root of the chord that sounds; -1 for none.</param>
/// <param name="AboveRoot">The note's place above that root on the line of fifths.</param>
/// <param name="Leads">Where the line goes from it, by a semitone.</param>
internal readonly record struct NoteSurroundings(int PitchClass, int Signature, int NextSignature, int ChordRoot, int AboveRoot, Leading Leads);

/// <summary>Where a line goes on from a note by a semitone; both when notes of a chord go different ways.</summary>
[Flags]
internal enum Leading
{
    Nowhere = 0,
    Up = 1,
    Down = 2,
}
