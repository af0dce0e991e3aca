using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>A recording of the song, and when some of its bars begin in it.</summary>
/// <param name="Name">The file's name.</param>
/// <param name="Bars">In the order played, later and later.</param>
public sealed record Recording(string Name, ValueList<RecordedBar> Bars);

/// <summary>When a bar begins in a recording.</summary>
/// <param name="Number">The bar's printed number; 0 is the pickup at the song's start.</param>
/// <param name="Time">Which time it is played, from 1: a bar in a repeat is played several times.</param>
/// <param name="At">From the start of the file.</param>
public readonly record struct RecordedBar(int Number, int Time, TimeSpan At);
