using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>Where in a strand a speaker may take a breath: best before a beat, otherwise before a note off the beat, never inside a tuplet.</summary>
internal sealed class Pauses
{
    private readonly Dictionary<Event, (Joint Before, bool EndsGroup)> places = new(ReferenceEqualityComparer.Instance);

    /// <param name="events">The strand, or the end of one; it begins with a whole tuplet if it begins with one.</param>
    /// <param name="meter">The bar's metre.</param>
    public Pauses(IReadOnlyList<Event> events, Meter meter)
    {
        var beats = StrongBeats.Starts(meter);
        var groups = TupletGroups.Of(events.ToValueList()).ToArray();
        for (var i = 0; i < events.Count; i++)
        {
            var group = Array.Find(groups, g => g.First <= i && i < g.After);
            var before = group.After > 0 && i > group.First ? Joint.Within : beats.Contains(events[i].Start) || group.After > 0 ? Joint.Beat : Joint.Item;
            places[events[i]] = (before, group.After == 0 || i + 1 == group.After);
        }
    }

    /// <summary>How the event is joined to what is said before it.</summary>
    public Joint Before(Event item) => places[item].Before;

    /// <summary>True for an event that is in the middle of a tuplet, not its first.</summary>
    public bool IsWithin(Event item) => Before(item) == Joint.Within;

    /// <summary>How many of some events in a row can be told as one thing: what begins inside a tuplet ends with it, what begins elsewhere ends inside one only if it is all in it.</summary>
    public int AsOne(IReadOnlyList<Event> row, int at, int count)
    {
        var ends = Enumerable.Range(1, count).Where(n => EndsGroup(row[at + n - 1])).ToArray();
        if (ends.Length == 0) return count;
        return IsWithin(row[at]) ? ends[0] : ends[^1];
    }

    /// <summary>False for an event whose tuplet goes on after it.</summary>
    public bool EndsGroup(Event item) => places[item].EndsGroup;
}
