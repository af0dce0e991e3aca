using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>A note with the string and fret it is played at.</summary>
/// <param name="Note">The note as the file has it.</param>
/// <param name="String">The string.</param>
/// <param name="Fret">Counted from the capo.</param>
/// <param name="Harmonic">The harmonic it is there, where its place was chosen and it is one.</param>
internal sealed record PlacedNote(RawNote Note, StringNumber String, Fret Fret, Harmonic? Harmonic);
