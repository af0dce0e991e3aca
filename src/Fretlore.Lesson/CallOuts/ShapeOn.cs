using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts;

/// <summary>The same again, one shape on: what was played of one shape, played of another.</summary>
internal static class ShapeOn
{
    /// <summary>The event with another shape, low to high, and all else as it was; a rest stays a rest.</summary>
    public static Event Of(Event item, IEnumerable<(StringNumber String, Fret Fret)> stops) => item.IsRest ? item : item with
    {
        Notes = [.. stops.Select(stop => item.Notes[0] with { String = stop.String, Fret = stop.Fret, Finger = null })],
    };
}
