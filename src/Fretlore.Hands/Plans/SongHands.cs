using System.Collections.Immutable;
using Fretlore.Hands.Grips;
using Fretlore.Score;

namespace Fretlore.Hands.Plans;

/// <summary>How the fretting hand plays one note.</summary>
/// <param name="Finger">The finger that holds it; null for an open string, a dead note, a tapped note, and what no hand can hold.</param>
/// <param name="Position">The fret the index finger stands at; 0 where nothing is held.</param>
public readonly record struct NoteHand(Finger? Finger, int Position)
{
    /// <summary>True where the note is at the fret that is its finger's own in the position: one fret for each finger.</summary>
    public bool IsAtHome(Note note) => Finger is { } finger and not Score.Finger.Thumb && note.Fret.Number == Position + (int)finger - 1;
}

/// <summary>How hard a bar is for the fretting hand.</summary>
public enum Difficulty
{
    /// <summary>Nothing is stopped.</summary>
    None,
    Easy,
    Moderate,
    Demanding,
    Hard,
}

/// <summary>What a stretch of music asks of the fretting hand.</summary>
/// <param name="Cost">In points of effort.</param>
/// <param name="ByEffort">The cost by <see cref="Effort"/>, in the order of its values.</param>
/// <param name="Seconds">How long it lasts at the written tempo.</param>
/// <param name="Difficulty">By points a second and by its hardest moment.</param>
/// <param name="Reasons">What makes it hard, the worst first, in words a teacher can read out; three at most.</param>
public sealed record HandLoad(double Cost, ImmutableArray<double> ByEffort, double Seconds, Difficulty Difficulty, ImmutableArray<string> Reasons);

/// <summary>What is wrong for a hand.</summary>
public enum HandProblemKind
{
    /// <summary>No hand of that size can hold the notes together.</summary>
    CantBeHeld,

    /// <summary>The hand would have to move faster than hands do.</summary>
    TooFast,

    /// <summary>The fingers that the sheet asks for don't reach.</summary>
    StatedFingersDontReach,

    /// <summary>A note that is written to sound on must be let go.</summary>
    HeldNoteLost,
}

/// <summary>Something a hand can't do as written.</summary>
/// <param name="Kind">What.</param>
/// <param name="Bar">Index into the written bars.</param>
/// <param name="Note">The note where it shows.</param>
/// <param name="Facts">The figures behind it, in words without a full stop; empty where there are none.</param>
public sealed record HandProblem(HandProblemKind Kind, int Bar, NoteId Note, string Facts);

/// <summary>The hand plan of one part or riff, in written order.</summary>
/// <param name="Name">The part's or the riff's name.</param>
/// <param name="Whole">All of it.</param>
/// <param name="Bars">Each written bar.</param>
/// <param name="Problems">In order of time.</param>
public sealed record LineHands(string Name, HandLoad Whole, ImmutableArray<HandLoad> Bars, ImmutableArray<HandProblem> Problems);

/// <summary>The hand plan of a song.</summary>
/// <param name="Hand">The hand it is for.</param>
/// <param name="Notes">For each note id how it is played.</param>
/// <param name="Parts">One for each part of the song.</param>
/// <param name="Riffs">One for each riff of the song, as defined.</param>
public sealed record SongHands(PlayingHand Hand, ImmutableArray<NoteHand> Notes, ImmutableArray<LineHands> Parts, ImmutableArray<LineHands> Riffs)
{
    /// <summary>Parts, then riffs, with what was worked out for them: the start of the plan of the song's next version.</summary>
    internal ImmutableArray<PlannedLine> Lines { get; init; } = [];

    public NoteHand Of(NoteId note) => Notes[note.Index];
}
