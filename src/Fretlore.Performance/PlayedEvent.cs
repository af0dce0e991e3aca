using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>An event of one strand with its place in the unrolled song.</summary>
/// <param name="Event">As written.</param>
/// <param name="Strand">Its strand.</param>
/// <param name="Bar">Index into the played bars.</param>
/// <param name="Start">Quarter notes from the song's start, with feel.</param>
/// <param name="End">Quarter notes from the song's start, with feel.</param>
internal sealed record PlayedEvent(Event Event, StrandKind Strand, int Bar, Beats Start, Beats End)
{
    public static List<PlayedEvent> AllOf(Part part, IReadOnlyList<PerformedBar> bars, Swing[] swings)
    {
        var all = new List<PlayedEvent>();
        for (var bar = 0; bar < bars.Count; bar++)
        {
            var first = all.Count;
            var start = bars[bar].Start;
            var strands = part.Bars[bars[bar].Bar].Strands;
            foreach (var strand in strands)
            {
                var places = swings[bars[bar].Bar].Places(strand.Events);
                for (var i = 0; i < strand.Events.Count; i++)
                    all.Add(new PlayedEvent(strand.Events[i], strand.Kind, bar, start + places[i], start + places[i + 1]));
            }
            // Stable, so that strands keep their order at equal times.
            if (strands.Count > 1) Sort(all, first);
        }
        return all;
    }

    private static void Sort(List<PlayedEvent> all, int first)
    {
        var sorted = all.Skip(first).OrderBy(e => e.Start).ToList();
        all.RemoveRange(first, all.Count - first);
        all.AddRange(sorted);
    }
}
