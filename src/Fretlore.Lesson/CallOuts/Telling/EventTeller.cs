using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>Says single events, one string or several at once.</summary>
/// <param name="strings">How strings are called.</param>
/// <param name="detail">How much is said.</param>
/// <param name="stopped">Strings that one finger lies across somewhere in the riff.</param>
internal sealed class EventTeller(StringWords strings, Detail detail, IReadOnlyCollection<ValueList<StringNumber>> stopped)
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
        if (item.IsRest || HoldsLast(item) || !(IsUniform(item) || IsPair(item))) return null;
        return item.Notes.Select(n => n.String).ToValueList();
    }

    public static bool IsUniform(Event item)
    {
        var first = item.Notes[0];
        return item.Notes.All(n =>
            n with { String = first.String, Id = first.Id, Sounding = first.Sounding, IsHeldOn = first.IsHeldOn } == first);
    }

    /// <summary>Two strings at different frets, told as "seven with nine".</summary>
    private bool IsPair(Event item) => item.Notes.Count == 2 && item.Notes[0].String.Value - item.Notes[1].String.Value is (1 or 2)
        && CanBeShape(item) && !IsNamed(item) && !IsUniform(item);

    /// <summary>Puts the hand on strings and says so: "one finger across the low three strings" where one finger lies across them in this riff.</summary>
    /// <param name="pair">True when the strings are stopped at different frets.</param>
    public string MoveTo(ValueList<StringNumber> place, bool pair = false)
    {
        var again = Hand.Places.Contains(place);
        Hand = Hand with { Place = place, Places = again || place.Count == 1 ? Hand.Places : Hand.Places.Add(place) };
        if (place.Count == 1) return strings.One(place[0]);
        var name = strings.TheSeveral(place);
        if (!StringWords.IsBlock(place)) return "together on " + name;
        if (!stopped.Contains(place) || pair) return name;
        return (again ? "back across " : "one finger across ") + name;
    }

    /// <summary>Says one event, or several alike in a row.</summary>
    /// <param name="suffix">Words for its length, or null.</param>
    /// <param name="landing">True for the note a passage comes to rest on.</param>
    /// <param name="joint">How it is joined to what was said before.</param>
    public void Say(Event item, int count, string? suffix, bool landing, Joint joint)
    {
        foreach (var grace in item.Graces)
        {
            var place = SetPlace([grace.String]);
            SayNote(grace, 1, place + "a quick ", joint, out _);
            Hand = Hand with { Frets = Hand.Frets.SetItem(grace.String, grace.Fret.Number) };
            joint = Joint.Mark;
        }
        var counted = false;
        if (item.IsRest) Breaths.Add(item.Stroke == Stroke.None ? "rest" : "a stroke in the air", joint);
        else if (HoldsLast(item)) SayHeld(item, joint);
        else if (IsUniform(item)) SayUniform(item, count, joint, landing, out counted);
        else if (IsPair(item)) SayPair(item, joint);
        else if (ShapeName(item) is { } shape) SayNotes(item.Notes[0] with { Finger = null }, ShapeApproach(item) + shape, joint);
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

    // A bend that goes on where it was needs no size.
    private void SayHeld(Event item, Joint joint)
    {
        var note = item.Notes[0];
        if (item.Notes.Count > 1 || note.Bend is not { FromCents: > 0 } bend || Hand.Last[0].Bend?.EndCents != bend.FromCents)
        {
            SayNotes(note, "hold it", joint);
            return;
        }
        var marks = Marks(note).Where(m => !m.StartsWith("still bent", StringComparison.Ordinal)).ToArray();
        var falls = marks.Length > 0 && marks[0].StartsWith(BendWords.Fall, StringComparison.Ordinal);
        Breaths.Add(falls ? "let the bend down" + marks[0][BendWords.Fall.Length..] : "hold the bend", joint);
        foreach (var mark in marks.Skip(falls ? 1 : 0))
        {
            Breaths.Add(IsRunOn(mark) ? mark : "and " + mark, Joint.RunOn);
        }
    }

    private static Comparer<StringNumber> ByString => Comparer<StringNumber>.Create((a, b) => b.Value.CompareTo(a.Value));

    private void SayUniform(Event item, int count, Joint joint, bool landing, out bool counted)
    {
        var place = SetPlace(item.Notes.Select(n => n.String).ToValueList());
        var note = item.Notes[0];
        var lead = "";
        if (landing && detail == Detail.WalkThrough
            && note is { Attack: Attack.Picked, IsDead: false, Harmonic: null, GlideIn: GlideIn.None, Fret.IsOpen: false } && !NoteWords.IsChug(note, Hand.PalmMuted))
        {
            (place, lead) = (place.TrimEnd() + (place.Length > 0 ? ", " : ""), "land on ");
        }
        else if (place.Length == 0) lead = Jump(note);
        SayNote(note, count, place + lead, joint, out counted);
    }

    private void SayPair(Event item, Joint joint)
    {
        var (low, high) = (item.Notes[0], item.Notes[1]);
        var lead = SetPlace([low.String, high.String], true);
        var approach = NoteWords.Approach(low, Before(low));
        if (!Hand.SaidFret && !low.Fret.IsOpen && approach.Length == 0) approach = "fret ";
        Hand = Hand with { SaidFret = true, Position = Math.Max(low.Fret.Number, high.Fret.Number) };
        SayNotes(low, $"{lead}{approach}{NoteWords.Fret(low.Fret.Number)} with {NoteWords.Fret(high.Fret.Number)}", joint);
    }

    private void SayNote(Note note, int count, string lead, Joint joint, out bool counted, bool several = false)
    {
        var approach = NoteWords.Approach(note, Before(note));
        var core = NoteWords.Core(note, count, Hand.PalmMuted, out counted);
        if (several && note.Attack != Attack.Held) core = core == "a dead note" ? "dead" : core.StartsWith("a ", StringComparison.Ordinal) ? core[2..] : core;
        if (note.Harmonic is { Kind: HarmonicKind.Natural } && note.Harmonic == Hand.Harmonic && lead.Length > 0 && approach.Length == 0 && note.Attack != Attack.Held) core = "the same";
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
        SayNotes(note, lead + approach + core, joint, NoteWords.IsChug(note, Hand.PalmMuted));
    }

    private void SayNotes(Note note, string core, Joint joint, bool chugSaid = false)
    {
        Breaths.Add(core, joint);
        foreach (var mark in Marks(note, chugSaid)) Breaths.Add(mark, IsRunOn(mark) ? Joint.RunOn : Joint.Mark);
    }

    private static bool IsRunOn(string mark) =>
        mark.StartsWith("with ", StringComparison.Ordinal) || mark.StartsWith("and ", StringComparison.Ordinal);

    private IEnumerable<string> Marks(Note note) => Marks(note, false);

    private IEnumerable<string> Marks(Note note, bool chugSaid) => NoteWords.Marks(note, Hand.PalmMuted, chugSaid, Hand.Ringing, detail);

    // "up to fourteen" is said as a jump where the hand leaves its position on one string.
    private string Jump(Note note)
    {
        if (detail != Detail.WalkThrough || Hand.Position == 0 || note.Fret.IsOpen) return "";
        if (note is not { Attack: Attack.Picked, IsDead: false, Harmonic: null, GlideIn: GlideIn.None }
            || NoteWords.IsChug(note, Hand.PalmMuted)) return "";
        var by = note.Fret.Number - Hand.Position;
        return by >= JumpFrets ? "up to " : by <= -JumpFrets ? "down to " : "";
    }

    private string ShapeApproach(Event item) =>
        NoteWords.Approach(item.Notes[0], Before(item.Notes[0]));

    /// <summary>Spells out the first shape that events told in one go need, if it was not told yet.</summary>
    /// <param name="events">One event, or a whole tuplet: what is a second shape in it has to be told string by string.</param>
    public void Prepare(IEnumerable<Event> events)
    {
        if (events.FirstOrDefault(e => !e.IsRest && !IsUniform(e) && CanBeShape(e) && ShapeWords.IsCompact(e.Notes)) is not { } item) return;
        if (HoldsLast(item) || IsNamed(item) || ShapeWords.IsMoved(Hand.Shape, item.Notes, detail)) return;
        Breaths.Say($"Take this shape, from the {strings.One(item.Notes[0].String)} up: {ShapeWords.Frets(item.Notes)}");
        if (detail == Detail.NoteByNote && ShapeWords.Fingers(item.Notes) is { } fingers) Breaths.Say(fingers);
        Hand = Hand with { Shape = item.Notes };
    }

    // Two notes with fingers are told one by one, and so is a shape that is no shape to be held.
    private bool CanBeShape(Event item) => ShapeWords.IsPlain(item)
        && (detail != Detail.NoteByNote || ShapeWords.IsCompact(item.Notes) || item.Notes.All(n => n.Finger is null));

    private bool IsNamed(Event item) => item.Shape is { } name && Hand.Named.TryGetValue(name, out var known)
        && Stops(known) == Stops(item.Notes);

    // A shape is told by its name, or as the last one, moved or not.
    private string? ShapeName(Event item)
    {
        if (!CanBeShape(item)) return null;
        Hand = Hand with { Place = [] };
        if (Stops(Hand.Again) == Stops(item.Notes) && Stops(Hand.Shape) == Stops(item.Notes) && item.Notes[0] is { Attack: Attack.Picked, GlideIn: GlideIn.None }) return "again";
        Hand = Hand with { Again = item.Notes };
        if (IsNamed(item))
        {
            Hand = Hand with { Shape = item.Notes };
            return $"the {SpokenName.OfShape(item.Shape!)} shape";
        }
        var told = Hand.Shape;
        if (!ShapeWords.IsMoved(told, item.Notes, detail))
        {
            Hand = Hand with { Again = [] };
            return null;
        }
        Hand = Hand with { Shape = item.Notes };
        var (from, to) = (told[0].Fret.Number, item.Notes[0].Fret.Number);
        if (from == to) return "this shape";
        if (item.Notes[0] is not { Attack: Attack.Picked, GlideIn: GlideIn.None }) return "the same shape at " + NumberWords.Of(to);
        return (to > from ? "move it up to " : "move it down to ") + NumberWords.Of(to);
    }

    private ValueList<(StringNumber, Fret, Finger?)> Stops(ValueList<Note> notes) => ShapeWords.Stops(notes, detail);

    // Any other notes at once, string by string: "fifth string open with the second string three"; neighbours that are played alike together.
    private void SayChain(Event item, Joint joint)
    {
        Hand = Hand with { Place = [] };
        var isHard = item.Notes.All(n => n.IsAccented);
        for (var i = 0; i < item.Notes.Count;)
        {
            var alike = 1;
            while (i + alike < item.Notes.Count && IsUniform(item with { Notes = item.Notes.Items.Slice(i, alike + 1).ToValueList() })) alike++;
            var place = item.Notes.Skip(i).Take(alike).Select(n => n.String).ToValueList();
            var name = alike > 1 ? strings.TheSeveral(place) : (i == 0 ? "" : "the ") + strings.One(place[0]);
            var lead = (i == 0 ? "" : "with ") + name + " ";
            SayNote(isHard ? item.Notes[i] with { IsAccented = false } : item.Notes[i], 1, lead, i == 0 ? joint : Joint.RunOn, out _, alike > 1);
            i += alike;
        }
        if (isHard) Breaths.Add("all accented", Joint.Mark);
    }

    /// <summary>Puts the hand on strings; the words for it when it was elsewhere.</summary>
    private string SetPlace(ValueList<StringNumber> place, bool pair = false)
    {
        if (Hand.Place == place) return "";
        return MoveTo(place, pair) + " ";
    }

    private int? Before(Note note) => Hand.Frets.TryGetValue(note.String, out var fret) ? fret : null;
}
