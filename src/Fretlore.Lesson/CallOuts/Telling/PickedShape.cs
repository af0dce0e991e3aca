using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>A shape held while its strings are picked one after another, all ringing.</summary>
/// <param name="Name">The shape's name, or "this" for one without.</param>
/// <param name="Shape">Its notes, low to high.</param>
/// <param name="Events">What is picked.</param>
internal sealed record PickedShape(string Name, ValueList<Note> Shape, ValueList<Event> Events)
{
    private const string Nameless = "this";

    public int Count => Events.Count;

    /// <summary>The longest such stretch from an event on; null when there is none of four events on three strings.</summary>
    public static PickedShape? At(Event[] row, int at, EventTeller teller, Pauses pauses)
    {
        if (pauses.IsWithin(row[at])) return null;
        var frets = new SortedDictionary<int, Note>();
        var end = at;
        while (end < row.Length && Fits(row[end], row[at], frets)) Take(row[end++].Notes, frets);
        if (end > at && !pauses.EndsGroup(row[end - 1]))
        {
            while (end > at && !pauses.EndsGroup(row[end - 1])) end--;
            frets.Clear();
            foreach (var item in row[at..end]) Take(item.Notes, frets);
        }
        if (end - at < 4 || frets.Count < 3) return null;
        var notes = frets.Values.Reverse().ToValueList();
        if (row[at].Shape is { } name && teller.Hand.Named.TryGetValue(name, out var known)
            && notes.All(n => known.Any(k => k.String == n.String && k.Fret == n.Fret)))
        {
            return new PickedShape(SpokenName.OfShape(name), known, row[at..end].ToValueList());
        }
        return ShapeWords.IsCompact(notes) ? new PickedShape(Nameless, notes, row[at..end].ToValueList()) : null;
    }

    public void Tell(EventTeller teller, string? label, string? suffix, Pauses pauses)
    {
        var held = Name + " " + ShapeWords.Frets(Shape);
        var breaths = teller.Breaths;
        breaths.End();
        var rings = teller.Hand.Ringing ? "" : ", let it ring";
        var pick = label is null ? "pick" : "pick " + label;
        if (teller.Hand.Held == held) breaths.Head("keep holding it, and " + pick);
        else if (Name == Nameless)
        {
            breaths.Say($"Hold this shape, from the {teller.Strings.One(Shape[0].String)} up: {ShapeWords.Frets(Shape)}");
            breaths.Head($"keep holding it{rings}, and {pick}");
        }
        else breaths.Head($"hold the {Name} shape{rings}, and {pick}");
        for (var i = 0; i < Events.Count;)
        {
            var turns = 1;
            while (suffix is null && i + turns < Events.Count && Strings(Events[i + turns]) == Strings(Events[i])) turns++;
            turns = pauses.AsOne(Events.Items, i, turns);
            breaths.Add(Strike(Events[i], teller.Strings) + (turns > 1 ? " " + NumberWords.Times(turns) : ""), pauses.Before(Events[i]));
            if (suffix is not null) breaths.Append(" " + suffix);
            for (var turn = 0; turn < turns; turn++) teller.Hand = teller.Hand.After(Events[i++]);
        }
        breaths.End();
        teller.Hand = teller.Hand with { Place = [], Held = held };
    }

    private static void Take(ValueList<Note> notes, SortedDictionary<int, Note> frets)
    {
        foreach (var note in notes) frets[note.String.Value] = note;
    }

    private static bool Fits(Event item, Event first, SortedDictionary<int, Note> frets) =>
        !item.IsRest && item.Shape == first.Shape && item.Graces.Count == 0 && item.Notes.Count <= 2
        && !NoteWords.EventMarks(item, Detail.NoteByNote).Any()
        && item.Notes.All(n =>
            n is { Attack: Attack.Picked, LetsRing: true, IsDead: false, IsPalmMuted: false, GlideIn: GlideIn.None, Harmonic: null,
            Finger: null }
            && !NoteWords.Marks(n, true, true, true, Detail.NoteByNote).Any()
            && (!frets.TryGetValue(n.String.Value, out var known) || known.Fret == n.Fret));

    // "fifth", or "third and second together".
    private static string Strike(Event item, StringWords strings)
    {
        var names = item.Notes.Select(n => Short(strings.One(n.String))).ToArray();
        return names.Length == 1 ? names[0] : string.Join(" and ", names) + " together";
    }

    private static string Short(string name) => name[..^" string".Length];

    private static ValueList<StringNumber> Strings(Event item) => item.Notes.Select(n => n.String).ToValueList();
}
