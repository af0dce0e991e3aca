using System.Collections.Immutable;
using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>The events of one strand in one bar.</summary>
/// <param name="Events">In order.</param>
/// <param name="Before">The event of this strand that sounds up to the bar's start, or null.</param>
/// <param name="Bar">Index of the bar, for remarks.</param>
/// <param name="ChangesAt">What is to be written before the event that starts at a time, such as a tempo; or null.</param>
internal sealed record StrandBar(IReadOnlyList<Event> Events, Event? Before, int Bar, Func<Beats, string?> ChangesAt)
{
    /// <summary>The first event to write.</summary>
    public int From { get; init; }

    /// <summary>The event after the last one to write.</summary>
    public int To { get; init; } = Events.Count;
}

/// <summary>Writes strands as tokens.</summary>
internal sealed class StrandText(Neck neck, IReadOnlyDictionary<string, NamedShape> shapes, Remarks remarks, string part)
{
    /// <summary>Adds the bar's tokens to the line.</summary>
    public void Write(StrandBar bar, StrandHand hand, List<Token> line)
    {
        if (bar.From == 0) (hand.Times, hand.Cell) = RhythmText.Of(bar.Events, hand.Cell);
        var times = hand.Times;
        for (var i = bar.From; i < bar.To;)
        {
            var picked = PickText.LengthAt(bar, i, shapes, neck);
            if (picked > 0) i = WritePick(bar, i, picked, times, hand, line);
            else WriteEvent(bar, i++, times, hand, line);
        }
    }

    private int WritePick(StrandBar bar, int start, int count, RhythmCell?[] times, StrandHand hand, List<Token> line)
    {
        var events = bar.Events.Skip(start).Take(count).ToList();
        var (text, fingers) = PickText.Of(events, times.AsSpan(start, count), shapes[events[0].Shape!]);
        line.Add(new Token
        {
            Prefix = Join(bar.ChangesAt(events[0].Start), Marks(events[0])),
            Text = text,
            Needs = SpanNeeds(events[0], events[0].Notes.Any(n => n.IsPalmMuted) ? Need.Must : Need.MustNot, Need.Any),
            Fingers = fingers,
        });
        foreach (var item in events)
        {
            if (item.IsRest) hand.Sounding = [];
            else if (!item.Notes.All(n => n.IsTiedFromBefore)) hand.Sounding = [.. item.Notes];
        }
        return start + count;
    }

    private void WriteEvent(StrandBar bar, int index, RhythmCell?[] times, StrandHand hand, List<Token> line)
    {
        var item = Playable(bar, index);
        var (prefix, time) = (Join(bar.ChangesAt(item.Start), Marks(item)), times[index]?.Text);
        var fresh = item.Notes.Where(n => !n.IsTiedFromBefore).ToList();
        (prefix, time) = WriteGraces(bar, item, fresh, (prefix, time), hand, line);
        if (item.IsRest)
        {
            line.Add(new Token { Prefix = Join(prefix, time), Text = Stroke(item.Stroke) + "R", Needs = SpanNeeds(item, Need.Any, Need.Any) });
            hand.Sounding = [];
            return;
        }
        var holdable = Holdable(bar, index).ToList();
        var holdsAll = fresh.Count == 0 && holdable.Count == item.Notes.Count && item.Notes.Select(NoteText.Moves).Distinct().Count() == 1;
        var (joint, isExact) = JointText.Of(fresh, hand.Sounding);
        if (!isExact) remarks.Add(RemarkKind.Changed, "Notes that start together are reached in different ways, or from where nothing sounds; they are written as most of them are.", part, bar.Bar + 1);
        var glideIn = GlideIn(fresh, bar.Bar);
        if (glideIn.Length > 0) joint = "";
        if (joint == "; ") joint = MarkGlide(hand, line) ? "" : ";";
        var shape = ShapeOf(item);
        var told = shape is null ? item.Notes : item.Notes.Select(n => WithoutShapes(n, shapes[shape])).ToValueList();
        var sound = SoundText.Of(told.Items, holdsAll, item.Roll, shape, NextPlace(bar.Events, index), neck, hand);
        if (holdsAll && item.Stroke != Score.Stroke.None) remarks.Add(RemarkKind.LeftOut, "A stroke on a note that is held.", part, bar.Bar + 1);
        var stroke = holdsAll ? "" : Stroke(item.Stroke);
        var allMuted = fresh.Count > 0 && fresh.All(n => n.IsPalmMuted);
        line.Add(new Token
        {
            Prefix = Join(prefix, sound.Where, time),
            Joint = joint,
            Text = glideIn + stroke + sound.Text,
            Muted = sound.Muted == sound.Text ? null : glideIn + stroke + sound.Muted,
            Suffix = GlideOut(item.Notes, bar.Bar),
            Needs = SpanNeeds(item, fresh.Count == 0 ? Need.Any : allMuted ? Need.Must : Need.MustNot, LetNeed(fresh, bar.Bar)),
            Fingers = fresh.Any(n => n.Attack is Attack.Picked or Attack.PickedGlide) ? item.PickingFinger?.ToString() : "",
        });
        hand.LastToken = line.Count - 1;
        hand.LastLine = line;
        if (holdsAll) return;
        var heldOn = item.Notes.Where(n => n.IsTiedFromBefore).Select(n => n.String).ToHashSet();
        hand.Sounding = [.. hand.Sounding.Where(n => heldOn.Contains(n.String)), .. fresh];
    }

    // A held note with nothing before it that could be held is played anew.
    private Event Playable(StrandBar bar, int index)
    {
        var item = bar.Events[index];
        if (!item.Notes.Any(n => n.IsTiedFromBefore)) return item;
        var holdable = Holdable(bar, index).Select(n => n.String).ToHashSet();
        if (item.Notes.All(n => !n.IsTiedFromBefore || holdable.Contains(n.String))) return item;
        remarks.Add(RemarkKind.Changed, "A tie from where nothing sounds is played as a new note.", part, bar.Bar + 1);
        return item with
        {
            Notes = item.Notes.Select(n => n.IsTiedFromBefore && !holdable.Contains(n.String) ? n with { Attack = Attack.Picked } : n).ToValueList(),
        };
    }

    private static IEnumerable<Note> Holdable(StrandBar bar, int index)
    {
        var before = index > 0 ? bar.Events[index - 1] : bar.Events[index].Start.IsZero ? bar.Before : null;
        return before is null ? [] : before.Notes.Where(n => !n.IsDead && n.GlideOut == Score.GlideOut.None);
    }

    private (string Prefix, string? Time) WriteGraces(
        StrandBar bar, Event item, List<Note> fresh, (string Text, string? Time) prefix, StrandHand hand, List<Token> line)
    {
        if (item.Graces.Count == 0) return prefix;
        if (item.IsRest)
        {
            remarks.Add(RemarkKind.LeftOut, "Grace notes before a rest.", part, bar.Bar + 1);
            return prefix;
        }
        foreach (var grace in GraceGroups(item, fresh))
        {
            var (joint, _) = JointText.Of(grace, hand.Sounding);
            if (joint == "; ") joint = "";
            var sound = SoundText.Of(grace, false, Roll.None, null, [item.Notes[0].String], neck, hand);
            var muted = grace.All(n => n.IsPalmMuted);
            line.Add(new Token
            {
                Prefix = Join(prefix.Text, sound.Where, prefix.Time),
                Joint = joint,
                Text = "g" + sound.Text,
                Muted = sound.Muted == sound.Text ? null : "g" + sound.Muted,
                Needs = Token.NoNeeds.SetItem((int)SpanWord.Pm, muted ? Need.Must : Need.MustNot)
                    .SetItem((int)SpanWord.Let, grace.Any(n => n.LetsRing) ? Need.Must : Need.MustNot),
            });
            hand.Sounding = [.. grace];
            prefix = ("", null);
        }
        return prefix;
    }

    // Grace notes on several strings stand together where what follows is joined to all of them.
    private static IEnumerable<IReadOnlyList<Note>> GraceGroups(Event item, List<Note> fresh)
    {
        var graces = item.Graces.Select(g => g.IsTiedFromBefore ? g with { Attack = Attack.Picked } : g).ToList();
        var isChord = graces.Count > 1 && graces.Zip(graces.Skip(1)).All(p => p.First.String.Value > p.Second.String.Value);
        if (isChord && !JointText.Of(fresh, [graces[^1]]).IsExact && JointText.Of(fresh, [.. graces]).IsExact) return [graces];
        return graces.Select(g => (IReadOnlyList<Note>)[g]);
    }

    private static bool MarkGlide(StrandHand hand, List<Token> line)
    {
        if (hand.LastLine != line || hand.LastToken < 0 || hand.LastToken >= line.Count || line[hand.LastToken].Suffix.Length > 0) return false;
        line[hand.LastToken] = line[hand.LastToken] with { Suffix = ";" };
        return true;
    }

    private string GlideIn(List<Note> fresh, int bar)
    {
        var ways = fresh.Select(n => n.GlideIn).Distinct().ToList();
        if (ways.Count > 1) remarks.Add(RemarkKind.Changed, "A glide into some notes of a chord is written for all of them.", part, bar + 1);
        return ways.FirstOrDefault(w => w != Score.GlideIn.None) switch
        {
            Score.GlideIn.FromBelow => "lo;",
            Score.GlideIn.FromAbove => "hi;",
            _ => "",
        };
    }

    private string GlideOut(ValueList<Note> notes, int bar)
    {
        var ways = notes.Select(n => n.GlideOut).Distinct().ToList();
        if (ways.Count > 1 && notes.Any(n => n.IsHeldOn))
        {
            remarks.Add(RemarkKind.LeftOut, "A glide out of one note of a chord while another sounds on is not carried over.", part, bar + 1);
            return "";
        }
        if (ways.Count > 1) remarks.Add(RemarkKind.Changed, "A glide out of some notes of a chord is written for all of them.", part, bar + 1);
        return ways.FirstOrDefault(w => w != Score.GlideOut.None) switch
        {
            Score.GlideOut.Downwards => ";lo",
            Score.GlideOut.Upwards => ";hi",
            _ => "",
        };
    }

    private Need LetNeed(List<Note> fresh, int bar)
    {
        if (fresh.Count == 0) return Need.Any;
        var ringing = fresh.Count(n => n.LetsRing);
        if (ringing > 0 && ringing < fresh.Count) remarks.Add(RemarkKind.Changed, "Some notes of a chord are left ringing; all of them are.", part, bar + 1);
        return ringing > 0 ? Need.Must : Need.MustNot;
    }

    // A shape's name stands where its notes are the event's and all are marked alike.
    private string? ShapeOf(Event item)
    {
        if (item.Shape is not { } name || !shapes.TryGetValue(name, out var shape) || shape.Shape.LowToHigh.Count != neck.StringCount) return null;
        var frets = shape.Shape.On(neck).Select(s => (s.String, s.Fret));
        if (!frets.SequenceEqual(item.Notes.Select(n => (n.String, n.Fret)))) return null;
        if (item.Notes.Any(n => n.IsTiedFromBefore || n.Attack == Attack.Tap || n.IsDead || n.Bend is { FromCents: > 0 })) return null;
        if (!HasItsFingers(item.Notes, shape)) return null;
        var told = item.Notes.Select(n => WithoutShapes(n, shape)).ToValueList();
        var marks = told.Select(n => NoteText.Of(n with { Fret = Fret.Open }, true)).Distinct();
        return marks.Count() == 1 && !SoundText.IsLetterFirst(SoundText.Outer(told.Items, palm: false)) ? name : null;
    }

    // Where the shape says a finger, the note has to have it.
    private static bool HasItsFingers(ValueList<Note> notes, NamedShape shape) =>
        notes.All(n => shape.FingerOf(n.String, n.Fret) is not { } finger || n.Finger == finger);

    private static Note WithoutShapes(Note note, NamedShape shape) =>
        note with { Finger = note.Finger == shape.FingerOf(note.String, note.Fret) ? null : note.Finger };

    private static ImmutableArray<StringNumber>? NextPlace(IReadOnlyList<Event> events, int index)
    {
        for (var i = index + 1; i < events.Count; i++)
        {
            var fresh = events[i].Notes.Where(n => !n.IsTiedFromBefore).Select(n => n.String).ToImmutableArray();
            if (fresh.Length > 0) return fresh;
        }
        return null;
    }

    private static string Stroke(Stroke stroke) => stroke switch { Score.Stroke.Down => "d", Score.Stroke.Up => "u", _ => "" };

    private static ImmutableArray<Need> SpanNeeds(Event item, Need pm, Need let)
    {
        return [pm, let, Of(Spans.TremoloPicking), Of(Spans.TremoloArm), Of(Spans.Wah), Of(Spans.Crescendo), Of(Spans.Diminuendo)];

        Need Of(Spans span) => item.Spans.HasFlag(span) ? Need.Must : Need.MustNot;
    }

    private static string Marks(Event item) => Join(
        item.Words is { } words && SheetWords.OneLine(words).Length > 0 ? SheetWords.Quoted(words) : null,
        item.HasFermata ? "(fermata)" : null,
        item.Dynamic is { } dynamic ? SheetWords.Of(dynamic) : null,
        item.ChordSymbol is { Length: > 0 } symbol ? $"(chord {Symbol(symbol)})" : null);

    private static string Symbol(string symbol) => symbol.All(c => char.IsLetterOrDigit(c) || c is '#' or '/' or '+' or '-') ? symbol : SheetWords.Quoted(symbol);

    private static string Join(params ReadOnlySpan<string?> texts)
    {
        var joined = "";
        foreach (var text in texts)
        {
            if (text is { Length: > 0 }) joined += joined.Length > 0 ? " " + text : text;
        }
        return joined;
    }
}
