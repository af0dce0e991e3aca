using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>What sounds in one bar of one part, in order of time and from low to high.</summary>
internal static class BarNotes
{
    /// <summary>All notes with a pitch; dead notes only stop the string they are on.</summary>
    internal static List<SoundedNote> Of(PartBar bar, Beats length)
    {
        var notes = new List<SoundedNote>();
        foreach (var strand in bar.Strands)
        {
            foreach (var item in strand.Events)
            {
                foreach (var note in item.Notes) notes.Add(new SoundedNote(item.Start, item.End, item.End, note, item, strand.Kind));
            }
        }
        if (notes.Count == 0) return notes;
        notes.Sort(static (a, b) => a.Start == b.Start ? a.Midi.CompareTo(b.Midi) : a.Start.CompareTo(b.Start));
        LetRing(notes, length);
        notes.RemoveAll(static n => n.Note.IsDead);
        return notes;
    }

    private static void LetRing(List<SoundedNote> notes, Beats length)
    {
        // From the last note back: when each string is next struck, and when the hand next takes another shape.
        var next = new Beats?[32];
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
