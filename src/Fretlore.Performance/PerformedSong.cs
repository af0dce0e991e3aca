using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>A song as timed events, repeats unrolled: the one performance that MIDI, sound and cursors share.</summary>
/// <param name="Song">The song that is played.</param>
/// <param name="Tempo">Musical time to seconds and back.</param>
/// <param name="Bars">The bars in the order played.</param>
/// <param name="Parts">One for each part of the song.</param>
public sealed record PerformedSong(Song Song, TempoMap Tempo, ImmutableArray<PerformedBar> Bars, ImmutableArray<PerformedPart> Parts)
{
    /// <summary>Quarter notes to the end of the last bar.</summary>
    public Beats Length => Bars.Length == 0 ? Beats.Zero : Bars[^1].Start + Song.Bars[Bars[^1].Bar].Length;

    /// <summary>Seconds to the end of the last bar.</summary>
    public double Seconds => Tempo.SecondsAt(Length);
}

/// <summary>One bar as it is played.</summary>
/// <param name="Bar">Index into the song's written bars.</param>
/// <param name="Pass">1 for the first time through its repeat.</param>
/// <param name="Start">Quarter notes from the song's start.</param>
/// <param name="StartSeconds">Seconds from the song's start.</param>
public readonly record struct PerformedBar(int Bar, int Pass, Beats Start, double StartSeconds);

/// <summary>What one part plays.</summary>
/// <param name="Part">The part as written.</param>
/// <param name="Notes">In order of onset, low strings first where onsets are equal.</param>
public sealed record PerformedPart(Part Part, ImmutableArray<PerformedNote> Notes);
