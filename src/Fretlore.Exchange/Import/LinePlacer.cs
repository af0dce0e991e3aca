using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Placing;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>Gives a part's notes strings and frets: those the file says, and to the others those that a hand plays most easily, all through the part.</summary>
internal sealed class LinePlacer(Remarks remarks, string part)
{
    // A harmonic touched above a stopped note is touched an octave above where the file does not say (common practice).
    private const int UsualTouch = 12;

    private readonly List<OpenNote> notes = [];
    private readonly List<RawNote> raw = [];
    private readonly Dictionary<StrandKind, List<int>> before = [];
    private readonly HashSet<int> goneOnFrom = [];

    // When the last event of each strand began; before the first bar there is time enough.
    private readonly double[] starts = [-1, -1, -1, -1];
    private Tempo tempo = Tempo.Default;
    private double barStart;
    private int bar;

    /// <summary>True when some note's place was chosen here.</summary>
    public bool HasChosen { get; private set; }

    /// <summary>Adds the next bar's voices, each in order.</summary>
    public void Add(Bar form, Neck neck, IReadOnlyList<(StrandKind Kind, List<RawEvent> Events)> voices)
    {
        var clock = new BarClock(form, tempo, barStart);
        var end = clock.Seconds(form.Length);
        foreach (var (kind, events) in voices)
        {
            foreach (var item in events) Add(item, kind, neck, (clock.Seconds(item.Start), clock.Seconds(item.End), end));
        }
        (tempo, barStart, bar) = (clock.LastTempo, end, bar + 1);
    }

    /// <summary>A place for each note that has one; what has none is left out and said.</summary>
    public IReadOnlyDictionary<RawNote, PlacedNote> Place()
    {
        var placed = new Dictionary<RawNote, PlacedNote>(ReferenceEqualityComparer.Instance);
        if (notes.Count == 0) return placed;
        var places = NotePlacer.Place(notes, notes[0].Neck, HandSize.Average, mayArrange: false);
        for (var i = 0; i < places.Length; i++)
        {
            var (note, given) = (raw[i], notes[i].Given);
            if (places[i] is not { } place) LeaveOut(notes[i]);
            else
            {
                if (given is not null && place.String != given.String)
                    remarks.Add(RemarkKind.Changed, "A note's string is held by another line: it is played on another string.", part, notes[i].Bar + 1);
                placed[note] = new PlacedNote(note, place.String, place.Fret, given is null ? place.Harmonic : null);
            }
        }
        return placed;
    }

    private void LeaveOut(OpenNote note)
    {
        var isOnNeck = NeckChoice.Reaches(note.Neck, note.Note.Sounding.Midi);
        remarks.Add(RemarkKind.LeftOut, isOnNeck ? "A note for which no string is free." : "A note that is not on the neck.", part, note.Bar + 1);
    }

    private void Add(RawEvent item, StrandKind kind, Neck neck, (double Start, double End, double BarEnd) time)
    {
        var sounding = before.GetValueOrDefault(kind) ?? [];
        if (item.Notes.Count > 0)
        {
            var length = BarClock.GraceSeconds(starts[(int)kind], time.Start, item.Graces.Count);
            for (var i = 0; i < item.Graces.Count; i++)
            {
                var at = time.Start - length * (item.Graces.Count - i);
                var grace = Open(item.Graces[i], neck, time with { Start = at, End = at + length }, sounding) with { Claims = time.Start };
                sounding = [Keep(item.Graces[i], grace), .. sounding];
            }
        }
        var struck = new List<int>();
        foreach (var note in item.Notes)
        {
            var open = Open(note, neck, time, sounding);
            // One note a string: of two that the file has on one, the second is placed anew.
            if (open.Given is { } given && struck.Exists(s => notes[s].Given?.String == given.String)) open = open with { Given = null };
            struck.Add(Keep(note, open));
        }
        (before[kind], starts[(int)kind]) = (struck, time.Start);
    }

    private int Keep(RawNote note, OpenNote open)
    {
        notes.Add(open);
        raw.Add(note);
        HasChosen |= open.Given is null && open.JoinedTo < 0;
        if (open.JoinedTo >= 0) goneOnFrom.Add(open.JoinedTo);
        return notes.Count - 1;
    }

    private OpenNote Open(RawNote note, Neck neck, (double Start, double End, double BarEnd) time, List<int> sounding)
    {
        var marks = note.Marks;
        var harmonic = marks.Harmonic;
        if (harmonic is { Kind: HarmonicKind.Touched } && note.Fret is null) harmonic = harmonic with { TouchedAt = new Fret(UsualTouch) };
        var given = Stated(note, neck);
        return new OpenNote
        {
            // What is bent is stopped by a finger.
            Note = marks with { String = new StringNumber(note.String ?? marks.String.Value), Sounding = new Height(note.Midi), Harmonic = harmonic, Bend = PlayedNote.BendOf(note.Bends) },
            Neck = neck,
            From = note is { String: not null, Fret: not null } ? neck : null,
            Bar = bar,
            Start = time.Start,
            End = time.End,
            RingsUntil = marks.LetsRing ? Math.Max(time.End, time.BarEnd) : time.End,
            Claims = time.Start,
            JoinedTo = JoinedTo(note, given, sounding),
            OwnFret = new Fret(note.Fret ?? 0),
            Given = given,
        };
    }

    // The note before it in its line that it goes on from: the same pitch for a tie, the nearest on the right side for a slur.
    private int JoinedTo(RawNote note, NotePlace? given, List<int> sounding)
    {
        var attack = note.Marks.Attack;
        if (attack is not (Attack.Held or Attack.HammerOn or Attack.PullOff or Attack.Glide or Attack.PickedGlide)) return -1;
        var free = sounding.Where(i => !goneOnFrom.Contains(i));
        // What both have a stated string for is joined on it, or not at all.
        if (given is not null && free.Any(i => notes[i].Given is not null)) return free.Where(i => notes[i].Given?.String == given.String).DefaultIfEmpty(-1).First();
        return free.Where(i => Leads(notes[i].Note.Sounding.Midi, note.Midi, attack)).OrderBy(i => Math.Abs(notes[i].Note.Sounding.Midi - note.Midi)).DefaultIfEmpty(-1).First();
    }

    private static bool Leads(int from, int to, Attack attack) => attack switch
    {
        Attack.Held => from == to,
        Attack.HammerOn => from < to,
        Attack.PullOff => from > to,
        _ => from != to,
    };

    private static NotePlace? Stated(RawNote note, Neck neck)
    {
        if (note.String is not { } number || number < 1 || number > neck.StringCount) return null;
        var at = new StringNumber(number);
        var harmonicFrets = note.Marks.Harmonic is null ? 0 : 12;
        if (note.Fret is { } fret && fret >= 0 && fret <= neck.HighestFret.Number + harmonicFrets && !neck.Capo.IsBehind(at, new Fret(fret)))
            return new NotePlace(at, new Fret(fret), neck.Sounding(at, new Fret(fret)), note.Marks.Harmonic);
        return note.Fret is null && neck.FretOf(at, new Height(note.Midi)) is { } found ? new NotePlace(at, found, new Height(note.Midi), note.Marks.Harmonic) : null;
    }
}
