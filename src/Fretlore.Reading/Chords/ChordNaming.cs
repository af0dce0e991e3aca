using System.Collections.Immutable;

namespace Fretlore.Reading.Chords;

/// <summary>What a set of sounding notes amounts to.</summary>
public enum ChordContent
{
    /// <summary>Nothing sounds.</summary>
    Silence,

    /// <summary>One pitch class, in one or several octaves: a note, no chord.</summary>
    OneNote,

    /// <summary>Two pitch classes: a fifth (power chord) or part of a chord.</summary>
    TwoNotes,

    /// <summary>Three pitch classes or more.</summary>
    Chord,
}

/// <summary>The names of a set of sounding notes.</summary>
/// <param name="Content">What there is to name.</param>
/// <param name="Candidates">Best first; empty for silence, the note itself for one note.</param>
public sealed record ChordNaming(ChordContent Content, ImmutableArray<ChordReading> Candidates);
