using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>The beams of a strand: eighths and shorter that follow one another within a beat group of the metre.</summary>
internal static class Beaming
{
    /// <summary>For each event the word for each of its beams, from the eighths' beam inwards; empty where it has flags or needs none.</summary>
    public static string[][] Of(Bar bar, ValueList<Event> events)
    {
        var beams = new string[events.Count][];
        Array.Fill(beams, []);
        for (var first = 0; first < events.Count;)
        {
            var after = first + 1;
            if (CanBeam(events[first]))
            {
                var group = GroupAt(bar, events[first].Start);
                while (after < events.Count && CanBeam(events[after]) && GroupAt(bar, events[after].Start) == group) after++;
                if (after - first > 1) BeamGroup(events, first, after, beams);
            }
            first = after;
        }
        return beams;
    }

    /// <summary>Beams a value has: 1 for an eighth.</summary>
    public static int CountOf(ValueBase value) => Math.Max(0, int.Log2((int)value) - 2);

    private static bool CanBeam(Event item) => !item.IsRest && CountOf(item.Value.Base) > 0;

    private static int GroupAt(Bar bar, Beats at)
    {
        // A pickup's beats are those at the end of a full bar.
        if (bar.IsPickup) at += bar.Meter.Length - bar.Length;
        var unit = Beats.Of(4, bar.Meter.Unit);
        var units = at.WholeCount(unit);
        var group = 0;
        foreach (var size in bar.Meter.Groups)
        {
            if (units < size) break;
            units -= size;
            group++;
        }
        return group;
    }

    private static void BeamGroup(ValueList<Event> events, int first, int after, string[][] beams)
    {
        for (var i = first; i < after; i++)
        {
            var count = CountOf(events[i].Value.Base);
            var before = i > first ? CountOf(events[i - 1].Value.Base) : 0;
            var next = i + 1 < after ? CountOf(events[i + 1].Value.Base) : 0;
            beams[i] = Enumerable.Range(1, count).Select(level => (before >= level, next >= level) switch
            {
                (true, true) => "continue",
                (true, false) => "end",
                (false, true) => "begin",
                _ => i > first ? "backward hook" : "forward hook",
            }).ToArray();
        }
    }
}
