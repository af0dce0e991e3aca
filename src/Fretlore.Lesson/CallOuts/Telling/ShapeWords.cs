using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>Shapes as spoken: which strings, and the frets low to high.</summary>
internal static class ShapeWords
{
    /// <summary>True when the notes differ in nothing but string and fret.</summary>
    public static bool IsPlain(Event item) => item.Notes.Count > 0 && item.Notes.All(n =>
        n.Harmonic is null && n.Bend is null && !n.IsDead && n.Attack != Attack.Held && Bare(n) == Bare(item.Notes[0]));

    /// <summary>True when it can be told as frets from one string up: three or more, never two strings in a row left out.</summary>
    public static bool IsCompact(ValueList<Note> lowToHigh)
    {
        if (lowToHigh.Count < 3) return false;
        for (var i = 1; i < lowToHigh.Count; i++)
        {
            if (lowToHigh[i - 1].String.Value - lowToHigh[i].String.Value > 2) return false;
        }
        return true;
    }

    /// <summary>What there is to a shape: strings, frets, and note by note the fingers.</summary>
    public static ValueList<(StringNumber String, Fret Fret, Finger? Finger)> Stops(ValueList<Note> notes, Detail detail) =>
        notes.Select(n => (n.String, n.Fret, detail == Detail.NoteByNote ? n.Finger : null)).ToValueList();

    /// <summary>"its fingers: index, open, any, ring"; null where none are written.</summary>
    public static string? Fingers(ValueList<Note> lowToHigh) => lowToHigh.All(n => n.Finger is null) ? null
        : "its fingers: " + string.Join(", ", lowToHigh.Select(n => n.Finger is { } finger ? NoteWords.Name(finger) : n.Fret.IsOpen ? "open" : "any"));

    /// <summary>"seven, skip one, six": a string left out is said too.</summary>
    public static string Frets(ValueList<Note> lowToHigh)
    {
        var said = new List<string>();
        for (var i = 0; i < lowToHigh.Count; i++)
        {
            if (i > 0)
            {
                var left = lowToHigh[i - 1].String.Value - lowToHigh[i].String.Value - 1;
                if (left > 0) said.Add("skip " + NumberWords.Of(left));
            }
            said.Add(NoteWords.Fret(lowToHigh[i].Fret.Number));
        }
        return string.Join(", ", said);
    }

    /// <summary>True when one is the other moved along the neck as a whole.</summary>
    public static bool IsMoved(ValueList<Note> from, ValueList<Note> to, Detail detail)
    {
        if (from.Count != to.Count || from.Count < 3) return false;
        var by = to[0].Fret.Number - from[0].Fret.Number;
        for (var i = 0; i < from.Count; i++)
        {
            if (detail == Detail.NoteByNote && from[i].Finger != to[i].Finger) return false;
            if (from[i].String != to[i].String || to[i].Fret.Number - from[i].Fret.Number != by) return false;
            if (by != 0 && (from[i].Fret.IsOpen || to[i].Fret.IsOpen)) return false;
        }
        return true;
    }

    private static Note Bare(Note note) =>
        note with { String = default, Fret = default, Sounding = default, Id = default, IsHeldOn = false, Finger = null };
}
