using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>Which events of a voice make up one tuplet: a bracket closes when a multiple of the ratio's group is full.</summary>
internal static class TupletGroups
{
    public static ImmutableArray<TupletGroup> Of(ValueList<Event> events, ImmutableArray<(int First, int Last)> beams)
    {
        var groups = ImmutableArray.CreateBuilder<TupletGroup>();
        for (var first = 0; first < events.Count;)
        {
            if (events[first].Tuplet is not { } tuplet)
            {
                first++;
                continue;
            }
            var last = first;
            var filled = events[first].Duration;
            while (!filled.Modulo(tuplet.GroupLength).IsZero && last + 1 < events.Count && events[last + 1].Tuplet == tuplet)
            {
                last++;
                filled += events[last].Duration;
            }
            groups.Add(new TupletGroup(first, last, LabelOf(tuplet), beams.Contains((first, last))));
            first = last + 1;
        }
        return groups.ToImmutable();
    }

    // The usual ratio of a count is the largest power of two below it (3:2, 5:4, 6:4, 7:4); others show both numbers.
    private static string LabelOf(Tuplet tuplet)
    {
        var usual = 1;
        while (usual * 2 < tuplet.Count) usual *= 2;
        return tuplet.InTimeOf == usual || (tuplet.Count, tuplet.InTimeOf) is (2, 3) or (4, 3) or (7, 8)
            ? tuplet.Count.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{tuplet.Count}:{tuplet.InTimeOf}");
    }
}
