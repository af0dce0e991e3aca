using Fretlore.Music.Chords;

namespace Fretlore.Reading.Chords;

/// <summary>A name before it is worded.</summary>
/// <param name="Root">Pitch class.</param>
/// <param name="Kind">What stands on the root.</param>
/// <param name="ForeignBass">The bass is no part of the kind.</param>
/// <param name="RootInKey">False when there is a key without this root.</param>
/// <param name="Cost">Lower is better.</param>
internal readonly record struct ChordGuess(int Root, ChordKind Kind, bool ForeignBass, bool RootInKey, double Cost);
