using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>Understands what is played, word by word, as a student follows a teacher: strings, value and mutes stay in force until said anew.</summary>
internal sealed partial class EventReader(StringWords strings)
{
    private static readonly (NoteValue, Tuplet?) Eighth = (new NoteValue(ValueBase.Eighth), null);
    private static readonly (NoteValue, Tuplet?) Sixteenth = (new NoteValue(ValueBase.Sixteenth), null);

    private readonly Dictionary<StringNumber, Note> lastOn = [];
    private readonly ShapeReader shapes = new(strings);
    private readonly List<Note> graces = [];
    private ValueList<StringNumber> place;
    private (NoteValue Value, Tuplet? Tuplet)[] cell = [];
    private int cellAt;
    private readonly List<int> saidLast = [];
    private int sameEvents = 1;

    /// <summary>What was understood since it was last emptied.</summary>
    public List<Event> Events { get; } = [];

    public ShapeReader Shapes => shapes;

    public bool PalmMuted { get; set; }

    public bool Ringing { get; set; }

    /// <summary>What sounded last, for "hold it".</summary>
    public ValueList<Note> Last { get; set; }

    /// <summary>Reads a whole sentence; what could not be understood, or null.</summary>
    public string? Read(WordRow row)
    {
        for (row.SkipPauses(); !row.IsAtEnd; row.SkipPauses())
        {
            var before = row.Place;
            if (!TrySetting(row) && !TryMark(row) && !TryItem(row)) return row.Rest;
            if (row.Place == before) return row.Rest;
        }
        return null;
    }

    /// <summary>Takes the hand to where a row of events leaves it, ready for another ending.</summary>
    public void GoOnFrom(IReadOnlyList<Event> events)
    {
        Last = default;
        foreach (var item in events) Follow(item);
        place = events[^1].Notes.Select(n => n.String).ToValueList();
    }

    /// <summary>Takes an event as played, without words.</summary>
    public void Follow(Event item)
    {
        if (item.IsRest) return;
        foreach (var note in item.Graces.Concat(item.Notes)) lastOn[note.String] = note;
        Last = item.Notes;
    }

    private bool TrySetting(WordRow row)
    {
        if (row.Take("straight")) return true;
        if (row.Take("one finger across") || row.Take("back across") || row.Take("together on")) return TryPlace(row, out place);
        if (TryPlace(row, out var strings))
        {
            place = strings;
            return true;
        }
        return TryLabel(row) || TryHold(row);
    }

    private bool TryLabel(WordRow row)
    {
        var start = row.Place;
        var count = row.Look(1) is "gallops" or "reverse" && row.TakeNumber(out var number) ? number : 1;
        var reverse = row.Take("reverse");
        if (row.Take("gallop") || row.Take("gallops"))
        {
            cell = reverse ? [Sixteenth, Sixteenth, Eighth] : [Eighth, Sixteenth, Sixteenth];
            cellAt = 0;
            if (!row.Take("on")) return count == 1;
            row.Take("fret");
            if (!(row.Take("open strings") || row.Take("open string")) || place.Count == 0)
            {
                if (!row.TakeNumber(out var fret)) return false;
                AddEvent(Notes(place, new Fret(fret)), 3 * count);
                return true;
            }
            AddEvent(Notes(place, Fret.Open), 3 * count);
            return true;
        }
        row.Place = start;
        var at = start;
        if (!ValueWords.TryRead(row.Words, ref at, out var value)) return false;
        row.Place = at;
        cell = [value];
        cellAt = 0;
        return true;
    }

    // "hold the lift shape, let it ring, and pick eighths:"
    private bool TryHold(WordRow row)
    {
        var start = row.Place;
        if (row.Take("keep holding") || (row.Take("hold") && shapes.TryHold(row)))
        {
            row.SkipPauses();
            shapes.Rings = row.Take("let ring") || shapes.Rings || Ringing;
            row.SkipPauses();
            if (row.Take("pick")) return true;
        }
        row.Place = start;
        return false;
    }

    private bool TryItem(WordRow row)
    {
        if (row.Take("quick")) return TryGrace(row);
        if (row.Take("rest") || row.Take("stroke in air"))
        {
            AddEvent([], 1);
            return true;
        }
        if (row.Take("hold bend"))
        {
            return AddEvent(Last.Select(n => Held(n.String) with { Bend = new Bend(n.Bend?.EndCents ?? 0, []) }).ToValueList(), 1);
        }
        if (row.Take("let bend down")) return TryFall(row);
        if (row.Take("hold")) return AddEvent(Last.Select(n => Held(n.String)).ToValueList(), 1);
        if (shapes.TryStrike(row, out var struck))
        {
            AddEvent(struck.Select(n => Bare(n.String, n.Fret) with { LetsRing = shapes.Rings }).ToValueList(), 1);
            return true;
        }
        return TryCore(row, out var notes, out var count) && AddEvent(notes, count);
    }

    // "let the bend down", or "down to a half step"
    private bool TryFall(WordRow row)
    {
        var cents = 0;
        if (row.Take("to"))
        {
            var at = row.Place;
            if (!BendWords.TryReadSize(row.Words, ref at, out cents)) return false;
            row.Place = at;
        }
        return AddEvent(Last.Select(n => Held(n.String) with { Bend = new Bend(n.Bend?.EndCents ?? 0, [cents]) }).ToValueList(), 1);
    }

    private bool TryGrace(WordRow row)
    {
        if (!TryCore(row, out var notes, out var count) || count != 1 || notes.Count != 1) return false;
        graces.Add(notes[0]);
        return true;
    }

    private bool TryCore(WordRow row, out ValueList<Note> notes, out int count)
    {
        count = 1;
        notes = [];
        if (!row.Take("land on") && !row.Take("up to")) row.Take("down to");
        var approach = Approach(row);
        row.Take("fret");
        if (shapes.TryShape(row, out var shape))
        {
            notes = shape.Select(n => approach(Bare(n.String, n.Fret) with { Finger = n.Finger })).ToValueList();
            return true;
        }
        if (row.Take("held"))
        {
            notes = place.Select(Held).ToValueList();
            return notes.Count > 0;
        }
        if (place.Count == 0 || Core(row, out count) is not { } core) return false;
        if (place.Count == 2 && row.Current == "with" && (row.Look(1) == "open" || NumberWords.IsNumber(row.Look(1))))
        {
            row.Take("with");
            if (!TryFret(row, out var high)) return false;
            notes = [approach(core(place[0])), approach(Bare(place[1], high))];
            return true;
        }
        notes = place.Select(s => approach(core(s))).ToValueList();
        return true;
    }

    private static Func<Note, Note> Approach(WordRow row)
    {
        var glide = row.Take("slide in from below to") ? GlideIn.FromBelow : row.Take("slide in from above to") ? GlideIn.FromAbove
            : GlideIn.None;
        var attack = Attack.Picked;
        if (row.Take("hammer to")) attack = Attack.HammerOn;
        else if (row.Take("pull off to")) attack = Attack.PullOff;
        else if (row.Take("hammer from nowhere on")) attack = Attack.HammerFromNowhere;
        else if (row.Take("tap")) attack = Attack.Tap;
        else if (row.Take("slide up to") || row.Take("slide down to")) attack = Attack.Glide;
        return note => note with { Attack = attack, GlideIn = glide };
    }

    private Func<StringNumber, Note>? Core(WordRow row, out int count)
    {
        count = 1;
        if (row.Take("open")) return s => Bare(s, Fret.Open);
        if (row.Take("harmonic at") && row.TakeNumber(out var touched)) return Harmonic(row, new Fret(touched));
        if (Last is [{ Harmonic: { Kind: HarmonicKind.Natural } last }] && row.Take("same")) return s => Bare(s, last.TouchedAt) with { Harmonic = last };
        if (row.Take("pinch harmonic on") && TryFret(row, out var pinched)) return s =>
            Bare(s, pinched) with { Harmonic = new Harmonic(HarmonicKind.Pinch, pinched) };
        if (row.Take("dead note") || row.Take("dead"))
        {
            var dead = row.Take("at") && row.TakeNumber(out var at) ? new Fret(at) : Fret.Open;
            return s => Bare(s, dead) with { IsDead = true, LetsRing = false };
        }
        if (row.Take("chug"))
        {
            var on = Fret.Open;
            if (row.Take("on") && !TryFret(row, out on)) return null;
            return s => Bare(s, on) with { IsPalmMuted = true, LetsRing = false };
        }
        if (!row.TakeNumber(out var number)) return null;
        count = number;
        if (row.Take("chugs")) return s => Bare(s, Fret.Open) with { IsPalmMuted = true, LetsRing = false };
        if (row.Take("dead notes")) return s => Bare(s, Fret.Open) with { IsDead = true, LetsRing = false };
        count = 1;
        return s => Bare(s, new Fret(number));
    }

    private Func<StringNumber, Note>? Harmonic(WordRow row, Fret touched)
    {
        if (!row.Take("over")) return s => Bare(s, touched) with { Harmonic = new Harmonic(HarmonicKind.Natural, touched) };
        return TryFret(row, out var stopped) ? s => Bare(s, stopped) with { Harmonic = new Harmonic(HarmonicKind.Touched, touched) } : null;
    }

    private static bool TryFret(WordRow row, out Fret fret)
    {
        fret = Fret.Open;
        if (row.Take("open")) return true;
        if (!row.TakeNumber(out var number)) return false;
        fret = new Fret(number);
        return true;
    }

    private bool TryPlace(WordRow row, out ValueList<StringNumber> read)
    {
        var at = row.Place;
        if (!strings.TryRead(row.Words, ref at, out read)) return false;
        row.Place = at;
        return true;
    }

    private bool AddEvent(ValueList<Note> notes, int count)
    {
        var item = new Event { Start = Beats.Zero, Value = new NoteValue(ValueBase.Quarter), Notes = notes, Graces = graces.ToValueList() };
        graces.Clear();
        for (var i = 0; i < count; i++) Events.Add(Timed(item));
        sameEvents = count;
        saidLast.Clear();
        saidLast.AddRange(Enumerable.Range(0, notes.Count));
        Follow(item);
        return true;
    }

    private Event Timed(Event item)
    {
        if (cell.Length == 0) return item;
        var (value, tuplet) = cell[cellAt];
        cellAt = (cellAt + 1) % cell.Length;
        return item with { Value = value, Tuplet = tuplet };
    }

    private ValueList<Note> Notes(ValueList<StringNumber> on, Fret fret) => on.Select(s => Bare(s, fret)).ToValueList();

    private Note Bare(StringNumber number, Fret fret) =>
        new() { String = number, Fret = fret, Sounding = default, IsPalmMuted = PalmMuted, LetsRing = Ringing && !PalmMuted };

    private Note Held(StringNumber number) => lastOn.TryGetValue(number, out var last)
        ? new Note { String = number, Fret = last.Fret, Sounding = default, Attack = Attack.Held }
        : Bare(number, Fret.Open) with { Attack = Attack.Held, IsPalmMuted = false, LetsRing = false };
}
