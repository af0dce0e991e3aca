using Fretlore.Music;

namespace Fretlore.Exchange.Midi;

/// <summary>Musical time in ticks.</summary>
internal static class MidiTime
{
    public const int TicksPerQuarter = 960;

    /// <summary>The nearest tick; the later one of two that are as near.</summary>
    public static long TicksOf(Beats at) => (at * TicksPerQuarter + Beats.Of(1, 2)).WholeCount(Beats.Quarter);
}
