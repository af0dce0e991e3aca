namespace Fretlore.Score;

/// <summary>The number of a note within its song: 0 to <see cref="Song.NoteCount"/> - 1, each once, riff definitions included.</summary>
/// <param name="Index">Dense, so that results of later stages can be arrays.</param>
public readonly record struct NoteId(int Index);
