using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>Which events of a strand make up one tuplet.</summary>
public static class TupletGroups
{
    /// <summary>Every group in order, by the index of its first event and that after its last; events outside tuplets are in none.</summary>
    /// <remarks>A group ends when its length is full, when another ratio begins, or where the events end.</remarks>
    public static IEnumerable<(int First, int After)> Of(ValueList<Event> events)
    {
        for (var first = 0; first < events.Count;)
        {
            var after = first + 1;
            if (events[first].Tuplet is { } tuplet)
            {
                while (after < events.Count && events[after].Tuplet == tuplet && events[after].End - events[first].Start <= tuplet.GroupLength) after++;
                yield return (first, after);
            }
            first = after;
        }
    }
}
