using Fretlore.Music;

namespace Fretlore.Reading.Moments;

/// <summary>Cuts a bar into stretches of one harmony each.</summary>
/// <remarks>
/// A new stretch begins where the hand takes another named shape, where two or more strings are struck with a note that is new, where the bass
/// moves on a beat, or where nothing of the stretch before sounds any more. Notes that join what still rings belong to it.
/// </remarks>
internal static class Segmenter
{
    internal static List<Segment> Cut(List<SoundedNote> notes, BeatGrid grid)
    {
        var segments = new List<Segment>();
        Segment? current = null;
        var struck = new List<SoundedNote>();
        for (var i = 0; i < notes.Count;)
        {
            var start = notes[i].Start;
            var next = i + 1;
            while (next < notes.Count && notes[next].Start == start) next++;
            Struck(notes, i, next, struck);
            var bassMoves = false;
            var isNext = current is null || (struck.Count > 0 ? Breaks(current, struck, start, grid, out bassMoves) : !current.SoundsAt(start));
            if (isNext)
            {
                var before = current;
                current = new Segment { Start = start, Shape = notes[i].Event.Shape };
                segments.Add(current);
                if (before is not null) CarryOver(before, current, start, bassMoves);
            }
            else if (struck.Count is 1 or 2 && current!.SoundsAt(start))
            {
                current.IsBroken = true;
            }
            for (var j = i; j < next; j++) current!.Add(notes[j]);
            current!.MostStruck = Math.Max(current.MostStruck, struck.Count);
            i = next;
        }
        for (var i = 0; i + 1 < segments.Count; i++) segments[i].End = Beats.Min(segments[i].End, segments[i + 1].Start);
        return segments;
    }

    private static void Struck(List<SoundedNote> notes, int from, int to, List<SoundedNote> struck)
    {
        struck.Clear();
        for (var i = from; i < to; i++)
        {
            if (notes[i].IsStruck) struck.Add(notes[i]);
        }
    }

    private static bool Breaks(Segment current, List<SoundedNote> struck, Beats start, BeatGrid grid, out bool bassMoves)
    {
        bassMoves = false;
        var shape = struck[0].Event.Shape;
        if (shape != current.Shape)
        {
            bassMoves = true;
            return true;
        }
        // A shape is one harmony for as long as it is held, however it is picked.
        if (shape is not null) return false;
        var set = default(PitchClassSet);
        foreach (var note in struck) set = set.With(note.Note.Sounding.PitchClass);
        var isNew = !set.IsWithin(current.Set);
        if (!current.SoundsAt(start)) return isNew || struck.Count == 1 && current.MostStruck > 1 || struck.Count > 1 && current.MostStruck == 1;
        var lowest = struck[0];
        var otherBass = lowest.Note.Sounding.PitchClass != current.Lowest.Note.Sounding.PitchClass;
        if (otherBass && (lowest.Note.String == current.Lowest.Note.String || lowest.Midi < current.Lowest.Midi && grid.IsOnBeat(start)))
        {
            bassMoves = true;
            return true;
        }
        return struck.Count > 1 && isNew;
    }

    // What still sounds by its written length goes on into the next stretch; what merely rings does so only while the bass stays.
    private static void CarryOver(Segment before, Segment after, Beats start, bool bassMoves)
    {
        foreach (var note in before.Notes)
        {
            var until = bassMoves ? note.WrittenEnd : note.End;
            if (until > start) after.Add(note with { Start = start });
        }
    }
}
