using Fretlore.Music;
using Fretlore.Performance;

namespace Fretlore.Sound.Mixing;

/// <summary>The played bars that are heard, and where they lie in the sound.</summary>
/// <param name="First">Index of the first played bar.</param>
/// <param name="Last">Index of the last played bar.</param>
/// <param name="Start">Seconds of performance where they begin.</param>
/// <param name="End">Seconds of performance where they end.</param>
/// <param name="LeadIn">Seconds of sound before the first bar: the count-in.</param>
/// <param name="RunUp">Samples of sound before the first bar in which a loop is going round already, and which are not kept; 0 for no loop.</param>
internal readonly record struct Stretch(int First, int Last, double Start, double End, double LeadIn = 0, long RunUp = 0)
{
    /// <summary>Samples past a loop's end that are rendered too, to join it to its beginning: 20 ms.</summary>
    public const int Seam = SampleRate.Hertz / 50;

    private const int LongestEcho = 4 * SampleRate.Hertz; // Until strings, room and repeats hold nothing of what was before it.

    public bool IsLoop => RunUp > 0;

    /// <summary>Samples the bars take.</summary>
    public long Length => SampleRate.At(End - Start);

    /// <summary>The sample at which something performed is heard.</summary>
    public long SampleAt(double seconds) => SampleRate.At(seconds - Start + LeadIn) + RunUp;

    /// <summary>By how many samples something is moved each time it is heard: once, or in a loop as often as it comes round in what is rendered.</summary>
    public IEnumerable<long> Rounds()
    {
        if (!IsLoop) return [0];
        var length = Length;
        return Enumerable.Range(0, (int)((RunUp + length - 1) / length) + 2).Select(round => (1 - round) * length).Reverse();
    }

    /// <summary>The same bars as a loop.</summary>
    public Stretch AsLoop() => this with { LeadIn = 0, RunUp = LongestEcho };

    /// <summary>The same bars with a bar of counting before them.</summary>
    public Stretch CountedIn(PerformedSong song)
    {
        var bar = song.Song.Bars[song.Bars[First].Bar];
        // Counting goes on through what a pickup leaves of its bar.
        var length = bar.Meter.Length + (bar.IsPickup ? Beats.Max(bar.Meter.Length - bar.Length, Beats.Zero) : Beats.Zero);
        return this with { LeadIn = length.ToDouble() * SecondsPerQuarter(song, song.Bars[First]) };
    }

    /// <summary>Finds bars by their printed numbers, in the first pass that has them; null when there are no such bars.</summary>
    public static Stretch? OfNumbers(PerformedSong song, int? fromBar, int? toBar)
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
        return Between(song, first, last);
    }

    /// <summary>Finds written bars, the first time they are played, with their own repeats; null when they are never played.</summary>
    public static Stretch? OfWritten(PerformedSong song, int firstBar, int barCount)
    {
        bool IsIn(int played) => song.Bars[played].Bar >= firstBar && song.Bars[played].Bar < firstBar + barCount;
        var first = 0;
        while (first < song.Bars.Length && !IsIn(first)) first++;
        if (first >= song.Bars.Length) return null;
        var last = first;
        while (last + 1 < song.Bars.Length && IsIn(last + 1)) last++;
        return Between(song, first, last);
    }

    public static double SecondsPerQuarter(PerformedSong song, PerformedBar bar) =>
        song.Tempo.Changes.Last(change => change.At <= bar.Start).Tempo.SecondsPerQuarter;

    private static Stretch Between(PerformedSong song, int first, int last) => new(
        first, last, song.Bars[first].StartSeconds, last + 1 < song.Bars.Length ? song.Bars[last + 1].StartSeconds : song.Seconds);
}
