using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts;

/// <summary>The same again, one shape on: what was played of some shapes, played of as many others.</summary>
internal static class ShapeOn
{
    /// <summary>What is struck in a row of events, each shape once, in the order it first comes; rests aside.</summary>
    public static ValueList<ValueList<(StringNumber String, Fret Fret)>> Struck(IEnumerable<Event> events) =>
        events.Where(e => !e.IsRest).Select(Stops).Distinct().ToValueList();

    /// <summary>The events with each shape that was struck exchanged for the one in its place, low to high, and all else as it was; a rest stays a rest.</summary>
    /// <param name="events">What was played.</param>
    /// <param name="shapes">As many as <see cref="Struck"/> gives.</param>
    public static IEnumerable<Event> Of(IReadOnlyList<Event> events, IReadOnlyList<ValueList<(StringNumber String, Fret Fret)>> shapes)
    {
        var before = Struck(events).Items;
        return events.Select(item => item.IsRest ? item : item with
        {
            Notes = [.. shapes[before.IndexOf(Stops(item))].Select(stop => item.Notes[0] with { String = stop.String, Fret = stop.Fret, Finger = null })],
        });
    }

    private static ValueList<(StringNumber, Fret)> Stops(Event item) => item.Notes.Select(n => (n.String, n.Fret)).ToValueList();
}
