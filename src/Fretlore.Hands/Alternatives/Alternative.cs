using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Hands.Alternatives;

/// <summary>What is done otherwise.</summary>
public enum AlternativeKind
{
    /// <summary>The same strings and frets under other fingers.</summary>
    OtherFingers,

    /// <summary>The same pitches on other strings and frets.</summary>
    OtherPlace,
}

/// <summary>One note as it is played in an alternative.</summary>
/// <param name="Id">The note.</param>
/// <param name="String">Its string there.</param>
/// <param name="Fret">Its fret there, counted from the capo.</param>
/// <param name="Finger">Its finger; null for an open string and what needs none.</param>
public readonly record struct AlternativeNote(NoteId Id, StringNumber String, Fret Fret, Finger? Finger);

/// <summary>Another way to play a riff.</summary>
/// <param name="Kind">What is done otherwise.</param>
/// <param name="Position">The lowest fret a finger stops.</param>
/// <param name="Cost">What it costs the hand, in points of effort.</param>
/// <param name="CostAsWritten">What the plan for the riff as written costs.</param>
/// <param name="Gains">What is better, in a few words each; at least one.</param>
/// <param name="Prices">What is worse; may be empty.</param>
/// <param name="Notes">All notes of the riff, in written order.</param>
public sealed record Alternative(
    AlternativeKind Kind, int Position, double Cost, double CostAsWritten, ImmutableArray<string> Gains, ImmutableArray<string> Prices, ImmutableArray<AlternativeNote> Notes);
