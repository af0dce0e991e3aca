using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>Where in a strand a speaker may take a breath: best before a beat, otherwise before a note off the beat, never inside a tuplet or a gallop.</summary>
internal sealed class Pauses
{
    private readonly Dictionary<Event, (Joint Before, bool EndsGroup)> places = new(ReferenceEqualityComparer.Instance);

    /// <param name="events">The strand, or the end of one; it begins with a whole tuplet or gallop if it begins with one.</param>
    /// <param name="meter">The bar's metre.</param>
    public Pauses(IReadOnlyList<Event> events, Meter meter)
    {
        var beats = StrongBeats.Starts(meter);
        var cells = RhythmRun.Of(events).Where(r => r.Cell != Cell.None).SelectMany(r => Enumerable.Range(0, r.Count / 3).Select(i => (First: r.First + 3 * i, After: r.First + 3 * i + 3)));
        (int First, int After)[] groups = [.. TupletGroups.Of(events.ToValueList()), .. cells];
        for (var i = 0; i < events.Count; i++)
        {
            var group = Array.Find(groups, g => g.First <= i && i < g.After);
            var before = group.After > 0 && i > group.First ? Joint.Within : beats.Contains(events[i].Start) || group.After > 0 ? Joint.Beat : Joint.Item;
            places[events[i]] = (before, group.After == 0 || i + 1 == group.After);
        }
    }

    /// <summary>How the event is joined to what is said before it.</summary>
    public Joint Before(Event item) => places[item].Before;

    /// <summary>True for an event that is in the middle of a tuplet or gallop, not its first.</summary>
    public bool IsWithin(Event item) => Before(item) == Joint.Within;

    /// <summary>How many of some events in a row can be told as one thing: what begins inside a tuplet or gallop ends with it, what begins elsewhere ends inside one only if it is all in it.</summary>
    public int AsOne(IReadOnlyList<Event> row, int at, int count)
    {
        var ends = Enumerable.Range(1, count).Where(n => EndsGroup(row[at + n - 1])).ToArray();
        if (ends.Length == 0) return count;
        return IsWithin(row[at]) ? ends[0] : ends[^1];
    }

    /// <summary>False for an event whose tuplet or gallop goes on after it.</summary>
    public bool EndsGroup(Event item) => places[item].EndsGroup;
}
