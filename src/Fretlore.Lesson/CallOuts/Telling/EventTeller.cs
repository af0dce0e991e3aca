using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>Says single events, one string or several at once.</summary>
internal sealed class EventTeller(StringWords strings, Detail detail)
{
    /// <summary>A stretch this wide from one stopped fret to the next is called out as a jump (a hand spans about four frets, common practice).</summary>
    private const int JumpFrets = 5;

    public Breaths Breaths { get; set; } = new();

    public Hand Hand { get; set; } = new();

    public Detail Detail => detail;

    public StringWords Strings => strings;

    /// <summary>The strings of an event that is told by place and one core; null for rests, held notes and shapes.</summary>
    public ValueList<StringNumber>? PlaceOf(Event item)
    {
        if (item.IsRest || HoldsLast(item) || !IsUniform(item)) return null;
        return item.Notes.Select(n => n.String).ToValueList();
    }

    public static bool IsUniform(Event item)
    {
        var first = item.Notes[0];
        return item.Notes.All(n => n with { String = first.String, Id = first.Id, Sounding = first.Sounding, IsHeldOn = first.IsHeldOn } == first);
    }

    /// <summary>"one finger across the low three strings" when a stopped fret follows on a block of strings; else the strings.</summary>
    public string PlaceWords(ValueList<StringNumber> place, bool stopped)
    {
        var name = strings.Several(place);
        if (place.Count == 1) return name;
        if (!StringWords.IsBlock(place)) return "together on the " + name;
        var article = name.StartsWith("all ", StringComparison.Ordinal) ? "" : "the ";
        return stopped ? "one finger across " + article + name : article + name;
    }

    /// <summary>Says one event, or several alike in a row.</summary>
    /// <param name="suffix">Words for its length, or null.</param>
    /// <param name="landing">True for the note a passage comes to rest on.</param>
    public void Say(Event item, int count, string? suffix, bool landing)
    {
        var joint = Joint.Item;
        foreach (var grace in item.Graces)
        {
            var place = SetPlace([grace.String]);
            SayNote(grace, 1, place + "a quick ", joint, out _);
            Hand = Hand with { Frets = Hand.Frets.SetItem(grace.String, grace.Fret.Number) };
            joint = Joint.Mark;
        }
        var counted = false;
        if (item.IsRest) Breaths.Add(item.Stroke == Stroke.None ? "rest" : "a stroke in the air", joint);
        else if (HoldsLast(item)) SayNotes(item.Notes[0], "hold it", joint);
        else if (IsUniform(item)) SayUniform(item, count, joint, landing, out counted);
        else if (ShapeName(item) is { } shape) SayNotes(item.Notes[0], ShapeApproach(item) + shape, joint);
        else SayChain(item, joint);
        var marks = NoteWords.EventMarks(item, detail).ToArray();
        foreach (var mark in marks) Breaths.Add(mark, Joint.Mark);
        if (count > 1 && !counted) Breaths.Append(" " + NumberWords.Times(count));
        if (suffix is not null) Breaths.Append(" " + suffix);
        Hand = Hand.After(item);
    }

    /// <summary>Held notes on exactly the strings that sounded last need no strings said.</summary>
    private bool HoldsLast(Event item) => item.Notes.All(n => n.IsTiedFromBefore)
        && item.Notes.Select(n => n.String).Order(ByString).SequenceEqual(Hand.Last.Select(n => n.String).Order(ByString))
        && item.Notes.All(n => Marks(n).SequenceEqual(Marks(item.Notes[0])));

    private static Comparer<StringNumber> ByString => Comparer<StringNumber>.Create((a, b) => b.Value.CompareTo(a.Value));

    private void SayUniform(Event item, int count, Joint joint, bool landing, out bool counted)
    {
        var place = SetPlace(item.Notes.Select(n => n.String).ToValueList());
        var note = item.Notes[0];
        var lead = "";
        if (landing && note is { Attack: Attack.Picked, IsDead: false, Harmonic: null, GlideIn: GlideIn.None, Fret.IsOpen: false }) lead = "land on ";
        else if (place.Length == 0) lead = Jump(note);
        SayNote(note, count, place + lead, joint, out counted);
    }

    private void SayNote(Note note, int count, string lead, Joint joint, out bool counted)
    {
        var approach = NoteWords.Approach(note, Before(note));
        var core = NoteWords.Core(note, count, Hand.PalmMuted, out counted);
        if (note.Attack == Attack.Held)
        {
            core = "held";
            counted = false;
        }
        else if (!note.Fret.IsOpen && note is { IsDead: false, Harmonic: null })
        {
            if (!Hand.SaidFret && approach.Length == 0 && !NoteWords.IsChug(note, Hand.PalmMuted)) core = "fret " + core;
            Hand = Hand with { SaidFret = true, Position = note.Fret.Number };
        }
        SayNotes(note, lead + approach + core, joint);
    }

    private void SayNotes(Note note, string core, Joint joint)
    {
        Breaths.Add(core, joint);
        foreach (var mark in Marks(note)) Breaths.Add(mark, mark.StartsWith("with ", StringComparison.Ordinal) || mark.StartsWith("and ", StringComparison.Ordinal) ? Joint.RunOn : Joint.Mark);
    }

    private IEnumerable<string> Marks(Note note) => NoteWords.Marks(note, Hand.PalmMuted, Hand.Ringing, detail);

    // "up to fourteen" is said as a jump where the hand leaves its position on one string.
    private string Jump(Note note)
    {
        if (detail != Detail.WalkThrough || Hand.Position == 0 || note.Fret.IsOpen) return "";
        if (note is not { Attack: Attack.Picked, IsDead: false, Harmonic: null, GlideIn: GlideIn.None } || NoteWords.IsChug(note, Hand.PalmMuted)) return "";
        var by = note.Fret.Number - Hand.Position;
        return by >= JumpFrets ? "up to " : by <= -JumpFrets ? "down to " : "";
    }

    private string ShapeApproach(Event item) =>
        NoteWords.Approach(item.Notes[0], Before(item.Notes[0]));

    // A shape is told by its name, as the last one moved, or spelled from its lowest string up.
    private string? ShapeName(Event item)
    {
        if (!ShapeWords.IsPlain(item) || (detail == Detail.NoteByNote && item.Notes.Any(n => n.Finger is not null))) return null;
        Hand = Hand with { Place = [] };
        if (item.Shape is { } name && Hand.Named.TryGetValue(name, out var known) && Places(known) == Places(item.Notes)) return $"the {SpokenName.Of(name)} shape";
        var told = Hand.Shape;
        if (!ShapeWords.IsCompact(item.Notes)) return null;
        Hand = Hand with { Shape = item.Notes };
        if (Places(told) == Places(item.Notes)) return "the same shape";
        return ShapeWords.IsMoved(told, item.Notes) ? "the same shape at " + NumberWords.Of(item.Notes[0].Fret.Number) : ShapeWords.Spelled(item.Notes, strings);
    }

    private static ValueList<(StringNumber, Fret)> Places(ValueList<Note> notes) => notes.Select(n => (n.String, n.Fret)).ToValueList();

    // Any other notes at once, string by string: "fifth string open with the second string three".
    private void SayChain(Event item, Joint joint)
    {
        Hand = Hand with { Place = [] };
        for (var i = 0; i < item.Notes.Count; i++)
        {
            var note = item.Notes[i];
            var name = strings.One(note.String) + " ";
            var lead = i == 0 ? name : "with the " + name;
            SayNote(note, 1, lead, i == 0 ? joint : Joint.RunOn, out _);
        }
    }

    /// <summary>Puts the hand on strings; the words for it when it was elsewhere.</summary>
    private string SetPlace(ValueList<StringNumber> place)
    {
        if (Hand.Place == place) return "";
        Hand = Hand with { Place = place };
        return (place.Count == 1 ? strings.One(place[0]) : PlaceWords(place, false)) + " ";
    }

    private int? Before(Note note) => Hand.Frets.TryGetValue(note.String, out var fret) ? fret : null;
}
