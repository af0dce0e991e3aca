using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Hands.Placing;

/// <summary>A note that looks for a string and a fret.</summary>
public sealed record OpenNote
{
    /// <summary>What sounds and how it is played; its own string is looked at only beside <see cref="From"/>.</summary>
    public required Note Note { get; init; }

    /// <summary>The neck its own string and fret are on; null where a file says neither, and what is touched or trilled is told in semitones.</summary>
    public Neck? From { get; init; }

    /// <summary>The neck it is looked for on.</summary>
    public required Neck Neck { get; init; }

    /// <summary>Index of its bar.</summary>
    public int Bar { get; init; }

    /// <summary>In seconds from the line's start.</summary>
    public required double Start { get; init; }

    /// <summary>In seconds; until then its string is taken.</summary>
    public required double End { get; init; }

    /// <summary>Until when it should ring on if its string is not needed; <see cref="End"/> where it does not ring.</summary>
    public required double RingsUntil { get; init; }

    /// <summary>From when its string must be free: a grace note's main note's start, any other note's own.</summary>
    public required double Claims { get; init; }

    /// <summary>Index of the note it goes on from on the same string (tied, hammered, pulled off, glided), or -1.</summary>
    public int JoinedTo { get; init; } = -1;

    /// <summary>The named shape it is part of: its fingers are lifted when another shape comes.</summary>
    public string? Shape { get; init; }

    /// <summary>The string it would rather stay on, or null.</summary>
    public StringNumber? Home { get; init; }

    /// <summary>The natural harmonic it would rather keep, or a dead note's own fret.</summary>
    public Fret OwnFret { get; init; }

    /// <summary>True where it was an open string and would rather be one again.</summary>
    public bool WasOpen { get; init; }

    /// <summary>True where it was an open string that sounded on under other notes.</summary>
    public bool IsDrone { get; init; }

    /// <summary>Where it is, when that is decided already.</summary>
    public NotePlace? Given { get; init; }

    /// <summary>True when it is decided already that it is not played.</summary>
    public bool IsGivenUp { get; init; }

    /// <summary>Semitones from one of its own frets up to another.</summary>
    internal int Semitones(Fret from, Fret to) => From?.Semitones(Note.String, from, to) ?? to.Number - from.Number;
}

/// <summary>Where a note is played.</summary>
/// <param name="String">The string.</param>
/// <param name="Fret">As written under the capo; for a natural harmonic the fret touched.</param>
/// <param name="Sounding">What sounds there: the note's own pitch, or an octave of it.</param>
/// <param name="Harmonic">The harmonic it is there, or null.</param>
public sealed record NotePlace(StringNumber String, Fret Fret, Music.Height Sounding, Harmonic? Harmonic);
