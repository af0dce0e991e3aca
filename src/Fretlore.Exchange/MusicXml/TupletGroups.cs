using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Where tuplet brackets start and stop in a strand.</summary>
internal static class TupletGroups
{
    /// <summary>For each event whether a bracket starts and whether it stops there.</summary>
    public static (bool Starts, bool Stops)[] Of(ValueList<Event> events)
    {
        var groups = new (bool Starts, bool Stops)[events.Count];
        for (var first = 0; first < events.Count;)
        {
            var after = first + 1;
            if (events[first].Tuplet is { } tuplet)
            {
                while (after < events.Count && events[after].Tuplet == tuplet && events[after].End - events[first].Start <= tuplet.GroupLength) after++;
                groups[first].Starts = true;
                groups[after - 1].Stops = true;
            }
            first = after;
        }
        return groups;
    }
}
