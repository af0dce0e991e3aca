using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>What sounds in one bar of one part, in order of time and from low to high.</summary>
internal static class BarNotes
{
    /// <summary>All notes with a pitch, in place of those of the bar before; dead notes only stop the string they are on.</summary>
    internal static void Read(PartBar bar, Beats length, List<SoundedNote> notes)
    {
        notes.Clear();
        var (ring, areDead) = (false, false);
        foreach (var strand in bar.Strands)
        {
            foreach (var item in strand.Events)
            {
                var end = item.End;
                foreach (var note in item.Notes)
                {
                    notes.Add(new SoundedNote(item.Start, end, end, note, item, strand.Kind));
                    ring |= note.LetsRing;
                    areDead |= note.IsDead;
                }
            }
        }
        notes.Sort(static (a, b) => a.Start == b.Start ? a.Midi.CompareTo(b.Midi) : a.Start.CompareTo(b.Start));
        if (ring) LetRing(notes, length);
        if (areDead) notes.RemoveAll(static n => n.Note.IsDead);
    }

    private static void LetRing(List<SoundedNote> notes, Beats length)
    {
        // From the last note back: when each string is next struck, and when the hand next takes another shape.
        Span<Beats?> next = stackalloc Beats?[32];
        next.Clear();
        string? shapeAhead = null;
        Beats? shapeChange = null;
        for (var i = notes.Count - 1; i >= 0; i--)
        {
            var note = notes[i];
            var number = note.Note.String.Value & 31;
            var shape = note.Event.Shape;
            if (shapeAhead is not null && shape != shapeAhead) shapeChange = notes[i + 1].Start;
            shapeAhead = shape ?? shapeAhead;
            if (note.Note.LetsRing)
            {
                var end = next[number] ?? length;
                if (shape is not null && shapeChange is { } change) end = Beats.Min(end, change);
                notes[i] = note with { End = Beats.Max(note.WrittenEnd, end) };
            }
            next[number] = note.Start;
        }
    }
}
