using Fretlore.Music;
using Fretlore.Performance;

namespace Fretlore.Sound.Mixing;

/// <summary>The played bars that are heard, and where they lie in the sound.</summary>
/// <param name="First">Index of the first played bar.</param>
/// <param name="Last">Index of the last played bar.</param>
/// <param name="Start">Seconds of performance where they begin.</param>
/// <param name="End">Seconds of performance where they end.</param>
/// <param name="LeadIn">Seconds of sound before the first bar: the count-in.</param>
internal readonly record struct Stretch(int First, int Last, double Start, double End, double LeadIn)
{
    /// <summary>The sample at which something performed is heard.</summary>
    public long SampleAt(double seconds) => SampleRate.At(seconds - Start + LeadIn);

    /// <summary>Finds bars by their printed numbers, in the first pass that has them; null when there are no such bars.</summary>
    public static Stretch? Of(PerformedSong song, int? fromBar, int? toBar, bool countIn)
    {
        int NumberOf(int played) => song.Song.Bars[song.Bars[played].Bar].Number;
        var first = 0;
        if (fromBar is { } from)
        {
            while (first < song.Bars.Length && NumberOf(first) != from) first++;
        }
        if (first >= song.Bars.Length) return null;
        var last = song.Bars.Length - 1;
        if (toBar is { } to)
        {
            last = first;
            while (last < song.Bars.Length && NumberOf(last) != to) last++;
            if (last >= song.Bars.Length) return null;
            // A bar split by a pickup has its number twice.
            while (last + 1 < song.Bars.Length && NumberOf(last + 1) == to && song.Bars[last + 1].Bar == song.Bars[last].Bar + 1) last++;
        }
        var end = last + 1 < song.Bars.Length ? song.Bars[last + 1].StartSeconds : song.Seconds;
        var leadIn = 0.0;
        if (countIn)
        {
            var bar = song.Song.Bars[song.Bars[first].Bar];
            // Counting goes on through what a pickup leaves of its bar.
            var length = bar.Meter.Length + (bar.IsPickup ? Beats.Max(bar.Meter.Length - bar.Length, Beats.Zero) : Beats.Zero);
            leadIn = length.ToDouble() * SecondsPerQuarter(song, song.Bars[first]);
        }
        return new Stretch(first, last, song.Bars[first].StartSeconds, end, leadIn);
    }

    public static double SecondsPerQuarter(PerformedSong song, PerformedBar bar) =>
        song.Tempo.Changes.Last(change => change.At <= bar.Start).Tempo.SecondsPerQuarter;
}
