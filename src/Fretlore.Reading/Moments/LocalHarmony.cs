using Fretlore.Music;

namespace Fretlore.Reading.Moments;

/// <summary>The chord that sounds around a part at a time: its own or one that rings on from the bar before, else that of the first other part that has one.</summary>
/// <param name="part">Index of the part.</param>
/// <param name="tracks">The harmony of every part.</param>
/// <param name="offset">How many bars of the tracks come before the first bar that is asked about.</param>
internal sealed class LocalHarmony(int part, IReadOnlyList<List<Segment>[]> tracks, int offset = 0)
{
    /// <param name="bar">Index of the bar.</param>
    /// <param name="at">Quarter notes from its start.</param>
    internal ChordReading? At(int bar, Beats at)
    {
        bar += offset;
        if (In(tracks[part], bar, at) is { } own) return own;
        for (var other = 0; other < tracks.Count; other++)
        {
            if (other != part && In(tracks[other], bar, at) is { } chord) return chord;
        }
        return null;
    }

    private static ChordReading? In(List<Segment>[] track, int bar, Beats at) =>
        In(track[bar], at) ?? (bar > 0 && track[bar - 1] is [.., var before] && before.RingsOn > at ? before.Best : null);

    private static ChordReading? In(List<Segment> segments, Beats at)
    {
        foreach (var segment in segments)
        {
            if (segment.Start > at) return null;
            if (segment.End > at && segment.Best is { } chord) return chord;
        }
        return null;
    }
}
