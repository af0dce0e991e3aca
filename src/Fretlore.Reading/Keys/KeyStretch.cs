using Fretlore.Music;

namespace Fretlore.Reading;

/// <summary>A stretch of bars in one key.</summary>
/// <param name="FirstBar">Index into the song's bars.</param>
/// <param name="BarCount">How many bars.</param>
/// <param name="Key">Tonic and mode.</param>
/// <param name="IsStated">True when the sheet says it; a stated key always stands.</param>
/// <param name="Reason">Why, in words a teacher can read out.</param>
public sealed record KeyStretch(int FirstBar, int BarCount, Key Key, bool IsStated, string Reason);
