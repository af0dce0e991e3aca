using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Plans;

/// <summary>What was read of a part.</summary>
/// <param name="Moments">In order of time.</param>
/// <param name="Ties">Notes that go on with another one, which has the finger.</param>
internal sealed record ReadMoments(IReadOnlyList<Moment> Moments, IReadOnlyList<(NoteId Tied, NoteId First)> Ties);

/// <summary>Turns a part in written order into the moments its fretting hand goes through.</summary>
/// <remarks>
/// A note is held for its value; one that rings, until its string plays again or its bar ends. Tapped notes belong to the other hand, dead notes and
/// open strings need no finger. Written order is planned, not the order with repeats: a repeat is played with the same fingers each time.
/// </remarks>
internal sealed class MomentReader
{
    private readonly List<Sounding> sounding = [];
    private readonly List<Moment> moments = [];
    private readonly Dictionary<int, Sounding> last = [];
    private readonly List<(NoteId Tied, NoteId First)> ties = [];
    private readonly GripTable grips;
    private Capo capo;
    private double leftAt;
    private double lastStart;

    private MomentReader(GripTable grips) => this.grips = grips;

    /// <summary>A stopped or open string while it sounds.</summary>
    private sealed class Sounding
    {
        public required Note Note { get; init; }

        public required string? Shape { get; init; }

        public required double End { get; set; }

        /// <summary>Until when it should sound on, if nothing hinders.</summary>
        public double RingsUntil { get; set; }

        public Finger? Stated { get; set; }

        /// <summary>Index of its press in the moment before; -1 when it has none.</summary>
        public int Press { get; set; } = -1;

        public bool IsStopped => !Note.Fret.IsOpen;
    }

    private readonly record struct Onset(double Start, double End, double BarEnd, Note Note, string? Shape, int Bar);

    /// <param name="bars">Written bars, for their tempo and length.</param>
    /// <param name="content">What is played in them.</param>
    /// <param name="grips">What the hand can hold.</param>
    public static ReadMoments Read(ValueList<Bar> bars, ValueList<PartBar> content, GripTable grips)
    {
        var reader = new MomentReader(grips);
        foreach (var group in Onsets(bars, content))
        {
            reader.capo = content[group[0].Bar].Neck.Capo;
            reader.Add(group);
        }
        return new ReadMoments(reader.moments, reader.ties);
    }

    // All notes by the time they begin, in seconds at the written tempo.
    private static IEnumerable<List<Onset>> Onsets(ValueList<Bar> bars, ValueList<PartBar> content)
    {
        var onsets = new List<Onset>();
        // When the last event of each strand began; before the first bar there is time enough.
        double[] before = [-1, -1, -1, -1];
        var tempo = Tempo.Default;
        var barStart = 0.0;
        for (var i = 0; i < content.Count; i++)
        {
            var clock = new BarClock(bars[i], tempo, barStart);
            var barEnd = clock.Seconds(bars[i].Length);
            foreach (var strand in content[i].Strands)
            {
                foreach (var item in strand.Events)
                {
                    var (start, end) = (clock.Seconds(item.Start), clock.Seconds(item.End));
                    var length = BarClock.GraceSeconds(before[(int)strand.Kind], start, item.Graces.Count);
                    for (var grace = 0; grace < item.Graces.Count; grace++)
                    {
                        var at = start - length * (item.Graces.Count - grace);
                        onsets.Add(new Onset(at, at + length, barEnd, item.Graces[grace], item.Shape, i));
                    }
                    foreach (var note in item.Notes) onsets.Add(new Onset(start, end, barEnd, note, item.Shape, i));
                    before[(int)strand.Kind] = start;
                }
            }
            (tempo, barStart) = (clock.LastTempo, barEnd);
        }
        List<Onset> group = [];
        foreach (var onset in onsets.OrderBy(o => o.Start))
        {
            if (group.Count > 0 && onset.Start - group[0].Start > SameTime)
            {
                yield return group;
                group = [];
            }
            group.Add(onset);
        }
        if (group.Count > 0) yield return group;
    }

    private const double SameTime = 0.0005;

    private void Add(List<Onset> group)
    {
        var now = group[0].Start;
        var before = sounding.ToList();
        sounding.RemoveAll(s => s.End <= now + SameTime && s.RingsUntil <= now + SameTime);
        var fresh = new Dictionary<Sounding, (Note Note, int Bar)>(ReferenceEqualityComparer.Instance);
        // The fingers of a named shape are lifted when another shape comes.
        if (group.Exists(onset => onset.Shape is not null))
        {
            sounding.RemoveAll(s => s.IsStopped && s.End <= now + SameTime && !group.Exists(onset => onset.Shape == s.Shape));
        }
        foreach (var onset in group) Start(onset, fresh);

        var held = Held();
        var hold = HoldNow(held, now);
        // What only rings on gives way where no hand could keep it: the oldest first.
        while (hold.Presses.Length > 0 && grips.Of(hold).Length == 0 && sounding.Find(s => s.IsStopped && s.End <= now + SameTime) is { } oldest)
        {
            sounding.Remove(oldest);
            held = Held();
            hold = HoldNow(held, now);
        }
        if (held.Count > 0)
        {
            var (links, notes, isNew) = (new PressLink[held.Count], new NoteId[held.Count], new bool[held.Count]);
            for (var i = 0; i < held.Count; i++)
            {
                isNew[i] = fresh.TryGetValue(held[i], out var it);
                notes[i] = isNew[i] ? it.Note.Id : held[i].Note.Id;
                links[i] = isNew[i] ? Joined(held[i], before) : Kept(held[i], now);
            }
            moments.Add(new Moment(hold, links, notes, isNew, group[0].Bar, now, TimeToMove(now), moments.Count == 0 ? double.MaxValue : Math.Max(HandCosts.LeastTime, now - lastStart)));
            for (var i = 0; i < held.Count; i++) held[i].Press = i;
            leftAt = 0;
            foreach (var s in before)
            {
                if (!held.Contains(s)) s.Press = -1;
            }
            foreach (var s in held) leftAt = Math.Max(leftAt, s.End);
            lastStart = now;
        }
        foreach (var s in sounding) last[s.Note.String.Value] = s;
    }

    // From the low string up, as a hold wants its presses.
    private List<Sounding> Held()
    {
        var held = new List<Sounding>(sounding.Count);
        foreach (var s in sounding)
        {
            if (!s.IsStopped) continue;
            var at = held.Count;
            while (at > 0 && held[at - 1].Note.String.Value < s.Note.String.Value) at--;
            held.Insert(at, s);
        }
        return held;
    }

    private Hold HoldNow(List<Sounding> held, double now)
    {
        var presses = new Press[held.Count];
        for (var i = 0; i < presses.Length; i++)
        {
            var note = held[i].Note;
            presses[i] = new Press(note.String.Value, note.Fret.Number, held[i].Stated, note.Bend?.PeakCents ?? 0, note.Harmonic is { Kind: HarmonicKind.Natural });
        }
        var open = 0;
        foreach (var s in sounding)
        {
            if (!s.IsStopped && s.End > now + SameTime) open |= 1 << s.Note.String.Value;
        }
        return new Hold(presses, open) { Capo = capo };
    }

    private void Start(Onset onset, Dictionary<Sounding, (Note Note, int Bar)> fresh)
    {
        var note = onset.Note;
        var running = sounding.FirstOrDefault(s => s.Note.String == note.String);
        if (note.IsTiedFromBefore && running is not null && running.Note.Fret == note.Fret)
        {
            running.End = onset.End;
            running.RingsUntil = note.LetsRing ? onset.BarEnd : onset.End;
            running.Stated ??= note.Finger;
            ties.Add((note.Id, running.Note.Id));
            return;
        }
        if (running is not null) sounding.Remove(running);
        // The other hand's fingers, and strings that are only laid dead, need no finger of this one.
        if (note.Attack == Attack.Tap || note.IsDead) return;
        var started = new Sounding
        {
            Note = note,
            Shape = onset.Shape,
            End = onset.End,
            RingsUntil = note.LetsRing ? Math.Max(onset.End, onset.BarEnd) : onset.End,
            Stated = note.Finger,
        };
        sounding.Add(started);
        fresh[started] = (note, onset.Bar);
    }

    private static PressLink Kept(Sounding s, double now) =>
        s.Press < 0 ? PressLink.None : new PressLink(s.End > now + SameTime ? Joining.Held : Joining.Ringing, s.Press);

    // A slur or a glide from the note before on its string, when that one was a moment ago.
    private PressLink Joined(Sounding s, List<Sounding> before)
    {
        var kind = s.Note.Attack switch
        {
            Attack.HammerOn or Attack.PullOff => Joining.Legato,
            Attack.Glide or Attack.PickedGlide => Joining.Glide,
            _ => Joining.None,
        };
        if (kind == Joining.None || !last.TryGetValue(s.Note.String.Value, out var from) || from.Press < 0 || !before.Contains(from)) return PressLink.None;
        return new PressLink(kind, from.Press);
    }

    private double TimeToMove(double now)
    {
        if (moments.Count == 0) return double.MaxValue;
        var left = Math.Min(now, leftAt);
        return Math.Max(HandCosts.LeastTime, now - left + HandCosts.LentShare * (left - lastStart));
    }
}
