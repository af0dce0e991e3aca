using Fretlore.Music;

namespace Fretlore.Reading.Chords;

/// <summary>What is known around a chord when it is named; <c>default</c> is nothing.</summary>
/// <param name="Key">The key, for spelling and for which root is likelier.</param>
public readonly record struct ChordContext(Key? Key = null);
