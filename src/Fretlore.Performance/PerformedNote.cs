using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>How a string is damped while it sounds.</summary>
public enum Damping
{
    None,

    /// <summary>The side of the picking hand rests on the strings.</summary>
    Palm,

    /// <summary>The fretting hand keeps it from ringing: a dead note.</summary>
    Dead,
}

/// <summary>One note as it is heard: one stroke (or hammer, or glide) on one string, ties joined.</summary>
public sealed record PerformedNote
{
    /// <summary>The written note that starts it.</summary>
    public required NoteId Note { get; init; }

    /// <summary>The written notes tied to it, in order.</summary>
    public ValueList<NoteId> HeldNotes { get; init; }

    /// <summary>Index into <see cref="PerformedSong.Bars"/> of the bar it starts in.</summary>
    public required int Bar { get; init; }

    public required StringNumber String { get; init; }

    public required Fret Fret { get; init; }

    /// <summary>The pitch without bend; <see cref="Pitch"/> says how far it goes from here.</summary>
    public required Height Height { get; init; }

    /// <summary>Quarter notes from the song's start, with feel, strum and grace notes taken into account.</summary>
    public required Beats Onset { get; init; }

    /// <summary>Quarter notes from the song's start; after <see cref="Onset"/>.</summary>
    public required Beats Release { get; init; }

    public required double OnsetSeconds { get; init; }

    public required double ReleaseSeconds { get; init; }

    /// <summary>1 to 127, as in the MIDI standard.</summary>
    public required int Velocity { get; init; }

    public required Attack Attack { get; init; }

    /// <summary>The direction of the picking hand where it is known.</summary>
    public Stroke Stroke { get; init; }

    public Damping Damping { get; init; }

    public Harmonic? Harmonic { get; init; }

    public bool IsGhost { get; init; }

    public bool IsGrace { get; init; }

    /// <summary>True when it sounds on until its string is played again or damped.</summary>
    public bool LetsRing { get; init; }

    /// <summary>Spans it stands in.</summary>
    public Spans Spans { get; init; }

    public PitchCurve Pitch { get; init; } = PitchCurve.Flat;
}
