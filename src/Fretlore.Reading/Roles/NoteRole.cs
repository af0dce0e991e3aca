using Fretlore.Music;

namespace Fretlore.Reading;

/// <summary>What a note does where it stands.</summary>
public enum RoleKind
{
    /// <summary>A note of the chord of the moment.</summary>
    ChordTone,

    /// <summary>A note above the chord that colours it: ninth, eleventh, thirteenth, altered or not.</summary>
    Tension,

    /// <summary>A short note between two others, a step from each, in one direction.</summary>
    PassingTone,

    /// <summary>A short note a step from the note that stands before and after it.</summary>
    NeighbourTone,

    /// <summary>A short note a semitone from the chord tone it leads to.</summary>
    ApproachNote,

    /// <summary>A note of the key where no chord sounds.</summary>
    KeyNote,

    /// <summary>Neither of the chord nor of the key, and it leads nowhere.</summary>
    Outside,

    /// <summary>A dead note: it has no pitch to have a role with.</summary>
    Dead,
}

/// <summary>The role of one note: what it does, and which degree it is.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="Degree">Above the chord's root, or above the key's tonic where no chord sounds; compound for tensions.</param>
/// <param name="Goal">The note it leads to or belongs to, for passing, neighbour and approach notes.</param>
/// <param name="Reached">The note a bend arrives at, when the role is that note's and not the fret's.</param>
public readonly record struct NoteRole(RoleKind Kind, Interval Degree, NoteName? Goal = null, NoteName? Reached = null)
{
    /// <summary>True when no chord sounds and the degree counts from the key's tonic.</summary>
    public bool IsOfKey { get; init; }

    /// <summary>As a teacher says it: <c>flat seventh</c>, <c>passing tone to G</c>.</summary>
    public string Words
    {
        get
        {
            var degree = Chords.Spoken.Degree(Degree);
            var words = Kind switch
            {
                RoleKind.ChordTone => degree,
                RoleKind.Tension => degree + ", a tension",
                RoleKind.PassingTone => "passing tone to " + Goal,
                RoleKind.NeighbourTone => "neighbour of " + Goal,
                RoleKind.ApproachNote => "approach note to " + Goal,
                RoleKind.KeyNote => degree + " of the key",
                RoleKind.Outside => degree + ", outside chord and key",
                _ => "dead note",
            };
            return Reached is { } reached ? $"bent to {reached}, {words}" : words;
        }
    }
}
