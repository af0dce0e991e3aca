using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>A strand as it was understood from words.</summary>
internal sealed record ReadStrand(StrandKind Kind, Beats Start, ValueList<Event> Events);

/// <summary>A riff as it was understood from words, and how its bars repeat.</summary>
/// <param name="Bars">The strands of each bar; none for a rest.</param>
/// <param name="Repeats">First bar, last bar (from 0) and how often.</param>
/// <param name="Problem">What could not be understood; null when all was.</param>
internal sealed record ReadRiff(ValueList<ValueList<ReadStrand>> Bars, ValueList<(int First, int Last, int Times)> Repeats,
    string? Problem);
