using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Reading.Phrases;

/// <summary>The pitches a note is heard at: where its bends arrive, not where its fret is.</summary>
internal static class HeardPitch
{
    /// <summary>Adds a note's length to the pitch classes it is heard at.</summary>
    internal static void AddTo(NoteWeights weights, Note note, double length)
    {
        if (note.Bend is not { } bend)
        {
            weights.Add(note.Sounding.PitchClass, length);
            return;
        }
        var stations = bend.ToCents.Count + (bend.FromCents > 0 || bend.ToCents.Count == 0 ? 1 : 0);
        var share = length / stations;
        if (bend.FromCents > 0 || bend.ToCents.Count == 0) weights.Add(At(note, bend.FromCents).PitchClass, share);
        foreach (var cents in bend.ToCents) weights.Add(At(note, cents).PitchClass, share);
    }

    /// <summary>The pitch the note begins at: above its fret when it is bent before it is picked.</summary>
    internal static Height Start(Note note) => note.Bend is { } bend ? At(note, bend.FromCents) : note.Sounding;

    /// <summary>The pitch the note arrives at.</summary>
    internal static Height End(Note note) => note.Bend is { } bend ? At(note, bend.EndCents) : note.Sounding;

    // A quarter-tone curl still belongs to its fret; three quarters of a semitone is heard as the next.
    private static Height At(Note note, int cents) => note.Sounding + (int)Math.Floor((cents + 25) / 100.0);
}
