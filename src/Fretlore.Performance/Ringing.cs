using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>When each note stops.</summary>
/// <remarks>
/// A string has one note at a time: the next one cuts it off. A note that is let ring sounds until then, or until its strand plays
/// something that is not let ring or rests before such a thing, or, when stopped by a finger of a named shape, until the shape
/// changes; and two bars at most. Staccato is half the value; a dead note is heard for a 32nd (common practice).
/// </remarks>
internal static class Ringing
{
    private static readonly Beats DeadLength = Beats.Of(1, 8);

    public static void Release(List<Sounding> notes, IReadOnlyList<PlayedEvent> events, Beats songEnd, Func<int, Beats> barLength)
    {
        var damped = DampedAt(events, songEnd);
        foreach (var note in notes)
        {
            var value = note.Values[^1];
            note.Release = value.End;
            if (note.Last.LetsRing && !note.IsGrace)
            {
                var (all, stopped) = damped[note.LastPlayed];
                var end = note.First.Fret.IsOpen ? all : Beats.Min(all, stopped);
                var most = value.End + barLength(note.LastPlayed.Bar) * 2;
                note.Release = Beats.Max(value.End, Beats.Min(end, most));
            }
            else if (note.Last.IsStaccato)
            {
                note.Release = value.Start + (value.End - value.Start) / 2;
            }
            if (note.First.IsDead) note.Release = Beats.Min(note.Release, note.Onset + DeadLength);
        }
        foreach (var onString in notes.GroupBy(n => n.First.String))
        {
            Sounding? before = null;
            foreach (var note in onString.OrderBy(n => n.Onset))
            {
                if (before is not null && note.Onset > before.Onset) before.Release = Beats.Min(before.Release, note.Onset);
                before = note;
            }
        }
    }

    // For each event: when what rings from it is damped, and when the fingers of its shape are lifted.
    private static Dictionary<PlayedEvent, (Beats All, Beats Stopped)> DampedAt(IReadOnlyList<PlayedEvent> events, Beats songEnd)
    {
        var damped = new Dictionary<PlayedEvent, (Beats, Beats)>(ReferenceEqualityComparer.Instance);
        var following = new Dictionary<StrandKind, (PlayedEvent Next, bool Rings)>();
        for (var i = events.Count - 1; i >= 0; i--)
        {
            var item = events[i];
            var rings = item.Event.Notes.Any(n => n.LetsRing);
            if (!following.TryGetValue(item.Strand, out var next))
            {
                damped[item] = (songEnd, songEnd);
            }
            else
            {
                // A rest takes the colour of what comes after it, so rests inside a ringing passage let it ring.
                var (all, stopped) = damped[next.Next];
                damped[item] = (next.Rings ? all : next.Next.Start, item.Event.Shape == next.Next.Event.Shape ? stopped : next.Next.Start);
                if (item.Event.IsRest) rings = next.Rings;
            }
            following[item.Strand] = (item, rings);
        }
        return damped;
    }
}
