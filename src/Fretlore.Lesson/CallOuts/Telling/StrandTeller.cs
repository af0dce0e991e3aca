using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>Says a row of events: rhythm, place, and what is played, alike things together.</summary>
/// <param name="teller">Says the single events and keeps the hand.</param>
/// <param name="meter">The bar's metre, for counting beats.</param>
/// <param name="landing">The event a passage comes to rest on, or null.</param>
internal sealed class StrandTeller(EventTeller teller, Meter meter, Event? landing)
{
    private Hand Hand
    {
        get => teller.Hand;
        set => teller.Hand = value;
    }

    private Detail Detail => teller.Detail;

    private Pauses pauses = new([], meter);

    /// <summary>Says the strand; in a walk-through, groups that repeat at once are said once.</summary>
    public void Tell(IReadOnlyList<Event> events)
    {
        pauses = new Pauses(events, meter);
        var groups = Detail == Detail.WalkThrough ? RepeatedGroup.Cut(events, pauses) : [new RepeatedGroup(0, events.Count, 1)];
        foreach (var group in groups)
        {
            if (group.Turns > 1 && TellOnce([.. events.Skip(group.First).Take(group.Length)], group.Turns)) continue;
            TellRuns([.. events.Skip(group.First).Take(group.Length * group.Turns)]);
        }
        teller.Breaths.End();
    }

    // "Do that twice" points at one sentence, so the group must fit into one.
    private bool TellOnce(Event[] events, int turns)
    {
        var (breaths, hand) = (teller.Breaths, Hand);
        teller.Breaths = new Breaths();
        TellRuns(events);
        teller.Breaths.End();
        var told = teller.Breaths.Sentences;
        teller.Breaths = breaths;
        if (told.Count != 1)
        {
            Hand = hand;
            return false;
        }
        breaths.Say(told[0][..^1]);
        breaths.Say($"Do that {NumberWords.Times(turns)}");
        return true;
    }

    private void TellRuns(Event[] events)
    {
        foreach (var run in RhythmRun.Of(events))
        {
            var row = events.AsSpan(run.First, run.Count).ToArray();
            if (run.Cell != Cell.None) TellCells(row, run.Cell == Cell.Gallop ? "gallop" : "reverse gallop");
            else TellGroups(row);
        }
    }

    // A value that comes up inside a tuplet is said behind its notes: a heading would break the tuplet.
    private void TellGroups(Event[] row)
    {
        var within = row.TakeWhile(pauses.IsWithin).Count();
        for (var i = 0; i < within; i++) TellValues([row[i]]);
        if (within < row.Length) TellValues(row[within..]);
    }

    private void TellValues(Event[] row)
    {
        var value = (row[0].Value, row[0].Tuplet);
        var isNew = Hand.Label != value;
        var worth = row.Length > 1 && (Detail == Detail.NoteByNote || IsWorthSaying(row));
        string? label = null;
        if (isNew && worth)
        {
            var fillsBar = row.Length > 3 && row.Sum(e => e.Duration) == meter.Length && row[0].Tuplet is null;
            label = (fillsBar ? "straight " : "") + ValueWords.Many(row[0].Value, row[0].Tuplet);
            Hand = Hand with { Label = value, AfterCell = false };
        }
        var suffix = !isNew || worth ? null : Detail == Detail.NoteByNote ? "for " + ValueWords.One(row[0].Value, row[0].Tuplet)
            : LengthWords.Beats(row[0].Duration, meter);
        TellRow(row, label, suffix);
    }

    // In a walk-through a value is said where it makes a pattern: three or more, long ones, tuplets, or after a gallop.
    private bool IsWorthSaying(Event[] row) => row.Count(e => !e.IsRest) > 1
        && (row.Length > 2 || row[0].Tuplet is not null || row[0].Duration >= Beats.Quarter || Hand.AfterCell || Hand.Label is not null);

    private void TellRow(Event[] row, string? label, string? suffix)
    {
        for (var at = 0; at < row.Length;)
        {
            if (PickedShape.At(row, at, teller, pauses) is { } picked)
            {
                picked.Tell(teller, label, suffix, pauses);
                label = null;
                at += picked.Count;
                continue;
            }
            if (!pauses.IsWithin(row[at])) teller.Prepare(row.Skip(at).TakeWhile((e, i) => i == 0 || pauses.IsWithin(e)));
            var place = teller.PlaceOf(row[at]);
            var alike = suffix is null ? pauses.AsOne(row, at, Alike(row, at)) : 1;
            var stay = Stay(row, at);
            var head = new List<string>();
            if (place is { } strings && strings != Hand.Place && !pauses.IsWithin(row[at]) && (label is not null || stay > alike || strings.Count > 1))
            {
                head.Add(teller.MoveTo(strings, !EventTeller.IsUniform(row[at])));
            }
            if (label is not null) head.Add(label);
            label = null;
            if (head.Count > 0) teller.Breaths.Head(string.Join(", ", head));
            teller.Say(row[at], alike, suffix, ReferenceEquals(row[at + alike - 1], landing) && alike == 1, pauses.Before(row[at]));
            at += alike;
        }
    }

    private void TellCells(Event[] row, string name)
    {
        for (var at = 0; at < row.Length;)
        {
            var cells = 0;
            while (at + 3 * (cells + 1) <= row.Length && IsOneThing(row, at, at + 3 * cells)) cells++;
            if (cells > 0)
            {
                TellOneThing(row[at], cells, name);
                at += 3 * cells;
                foreach (var item in row.Take(at)) Hand = Hand.After(item);
                continue;
            }
            var end = at;
            do end += 3;
            while (end < row.Length && !IsOneThing(row, end, end));
            TellRow(row[at..end], name, null);
            at = end;
        }
        teller.Breaths.End();
        Hand = Hand with { Label = null, AfterCell = true };
    }

    private void TellOneThing(Event item, int cells, string name)
    {
        var place = item.Notes.Select(n => n.String).ToValueList();
        var note = item.Notes[0];
        if (Hand.Place != place)
        {
            teller.Breaths.Head(teller.MoveTo(place));
        }
        var on = note.Fret.IsOpen ? place.Count > 1 ? "the open strings" : "the open string"
            : (Hand.SaidFret ? "" : "fret ") + NumberWords.Of(note.Fret.Number);
        if (!note.Fret.IsOpen) Hand = Hand with { SaidFret = true, Position = note.Fret.Number };
        teller.Breaths.Add(cells == 1 ? $"{(teller.Breaths.RunsOn ? "a " : "")}{name} on {on}"
            : $"{NumberWords.Of(cells)} {name}s on {on}", Joint.Beat);
        if (note.IsPalmMuted && !Hand.PalmMuted) teller.Breaths.Add("palm-muted", Joint.Mark);
    }

    // A gallop on one thing: three times the same plain note or one-finger shape.
    private bool IsOneThing(Event[] row, int first, int cell)
    {
        if (teller.PlaceOf(row[first]) is null || !EventTeller.IsUniform(row[first])
            || row[first].Notes[0] is not { Attack: Attack.Picked, IsDead: false, Harmonic: null,
            GlideIn: GlideIn.None } note) return false;
        if (note.LetsRing != (Hand.Ringing && NoteWords.RingsFree(note))) return false;
        if (NoteWords.Marks(note with { IsPalmMuted = false, LetsRing = false }, false, false, false, Detail).Any()
            || NoteWords.EventMarks(row[first], Detail).Any()) return false;
        var form = Form(row[first]);
        return Enumerable.Range(cell, 3).All(i => Form(row[i]) == form);
    }

    private static Event Form(Event item) => SpokenForm.Of(item, Detail.NoteByNote) with { Value = default };

    // Events alike in a row are told once with their count.
    private static int Alike(Event[] row, int at)
    {
        var first = row[at];
        if (first.IsRest || first.Graces.Count > 0
            || first.Notes.Any(n => n.Attack is not (Attack.Picked or Attack.Tap) || n.GlideIn != GlideIn.None)) return 1;
        var form = Form(first);
        var count = 1;
        while (at + count < row.Length && Form(row[at + count]) == form) count++;
        return count;
    }

    // How many events stay on the strings of this one.
    private int Stay(Event[] row, int at)
    {
        var place = teller.PlaceOf(row[at]);
        var count = 1;
        while (at + count < row.Length && (row[at + count].IsRest || teller.PlaceOf(row[at + count]) == place)) count++;
        while (row[at + count - 1].IsRest && count > 1) count--;
        return count;
    }
}

/// <summary>Adds lengths.</summary>
file static class Lengths
{
    public static Beats Sum(this Event[] events, Func<Event, Beats> length) => events.Aggregate(Beats.Zero, (sum, e) => sum + length(e));
}
