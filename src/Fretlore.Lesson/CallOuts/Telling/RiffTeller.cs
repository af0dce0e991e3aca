using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>Says a whole riff bar by bar, or what differs from the riff it varies.</summary>
internal sealed class RiffTeller(Riff riff, CallOutContext context, Detail detail)
{
    // With more shapes in a bar than these, it is easier to hear them one by one.
    private const int MostShapesOn = 3;

    private readonly EventTeller teller = new(new StringWords(riff.Neck.Tuning, context.Style.Strings), detail, Stopped(riff));
    private readonly BarForm[] forms = [.. riff.Content.Select(BarForm.Of)];

    private static HashSet<ValueList<StringNumber>> Stopped(Riff riff) =>
    [
        .. riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).Where(e => e.Notes.Count > 1 && EventTeller.IsUniform(e))
            .Where(e => !e.Notes[0].Fret.IsOpen && !e.Notes[0].IsDead && e.Notes[0].Harmonic is null)
                .Select(e => e.Notes.Select(n => n.String).ToValueList()),
    ];

    public Speech Tell()
    {
        var basis = detail == Detail.WalkThrough ? context.BaseOf(riff) : null;
        if (basis is not null && TryTellVariation(basis)) return Done();
        for (var bar = 0; bar < riff.Content.Count;)
        {
            bar += detail == Detail.WalkThrough ? TellBar(bar) : TellWhole(bar);
        }
        if (detail == Detail.WalkThrough)
        {
            foreach (var heard in new RoleTeller(riff, context.Roles).Tell()) teller.Breaths.Say(heard);
        }
        TellRepeats();
        return Done();
    }

    private Speech Done()
    {
        teller.Breaths.End();
        return new Speech(teller.Breaths.Sentences);
    }

    private bool TryTellVariation(Riff basis)
    {
        if (Likeness.Of(riff, basis) is not { } like) return false;
        if (TryTellOtherEnd(basis, like)) return true;
        if (like.IsWhole) return false;
        teller.Breaths.Say(SameAs(basis, like));
        foreach (var bar in like.Changed)
        {
            teller.Hand = teller.Hand.Moved();
            if (bar > 0) teller.Hand = Follow(basis.Content[bar - 1]);
            if (!TrySameStart(bar, BarForm.Of(basis.Content[bar]), basis.Content[bar], $"{BarNames([bar])} starts the same")) TellWhole(bar);
        }
        return true;
    }

    /// <summary>What the riff is beside the one it varies, without its full stop: "same as the furnace riff, but bar two changes".</summary>
    public string Relation(Riff basis)
    {
        var like = Likeness.Of(riff, basis);
        if (like is not null && TryTellOtherEnd(basis, like) && teller.Breaths.Sentences is [var one]) return one[..^1];
        return like is { IsWhole: false } ? SameAs(basis, like) : $"A variation on {RiffName(SpokenName.Of(basis.Name))}";
    }

    private string SameAs(Riff basis, Likeness like) => $"Same as {RiffName(SpokenName.Of(basis.Name))}"
        + (like.Changed.Count == 0 ? "" : $", but {HeadlineWords.Changes(BarNames([.. like.Changed]), like.Changed.Count)}");

    // "Same as the furnace riff, but end on ten": only the end of the last bar is another.
    private bool TryTellOtherEnd(Riff basis, Likeness like)
    {
        if (like.Changed is not [var bar] || bar != forms.Length - 1) return false;
        var hand = teller.Hand;
        if (bar > 0) teller.Hand = Follow(basis.Content[bar - 1]);
        if (TrySameStart(bar, BarForm.Of(basis.Content[bar]), basis.Content[bar], $"same as {RiffName(SpokenName.Of(basis.Name))}")) return true;
        teller.Hand = hand;
        return false;
    }

    /// <summary>"the furnace riff".</summary>
    internal static string RiffName(string spoken) => spoken.Split(' ')[^1] is "riff" or "lick" ? "the " + spoken : $"the {spoken} riff";

    // Bars told by pointing at earlier ones; how many were told.
    private int TellBar(int bar)
    {
        for (var from = 0; from < bar; from++)
        {
            var length = 0;
            while (bar + length < forms.Length && from + length < bar && forms[bar + length] == forms[from + length]
                && IsPlainBar(bar + length)) length++;
            if (length == 0) continue;
            // One bar is only said to be the same when it has something to it.
            if (forms[bar].EventCount < 2 && length == 1) continue;
            var (here, there) = (Range(bar, length), Range(from, length));
            var next = from + length == bar && length > 1;
            teller.Breaths.Say(from + length == bar && length == 1 ? $"{here}: same again" : next ? $"{here}: the same again"
                : $"{here}: same as {there}");
            for (var i = 0; i < length; i++) teller.Hand = Follow(riff.Content[bar + i]);
            return length;
        }
        for (var from = bar - 1; from >= 0; from--)
        {
            if (TryShapeOn(bar, from)) return 1;
        }
        for (var from = bar - 1; from >= 0; from--)
        {
            if (TrySameStart(bar, forms[from], riff.Content[from], $"{BarNames([bar])}: same {(from == bar - 1 ? "again" : "as " + BarNames([from]))}")) return 1;
        }
        return TellWhole(bar);
    }

    private bool IsPlainBar(int bar) => !riff.Bars[bar].StartsEnding && !riff.Bars[bar].IsPickup;

    // "Same as bar one, but end on ten": as many events as before, all but the last one or two alike.
    private bool TrySameStart(int bar, BarForm before, PartBar content, string same)
    {
        if (!IsPlainBar(bar) || content.Strands.Count != 1 || riff.Content[bar].Strands.Count != 1) return false;
        var (was, now) = (content.Strands[0].Events, riff.Content[bar].Strands[0].Events);
        if (was.Count != now.Count || now.Count < 4 || before.Timing != forms[bar].Timing
            || content.Neck != riff.Content[bar].Neck) return false;
        var first = 0;
        while (first < now.Count && SpokenForm.Of(was[first], Detail.NoteByNote) == SpokenForm.Of(now[first], Detail.NoteByNote)) first++;
        var pauses = new Pauses(now.Items, riff.Bars[bar].Meter);
        while (first < now.Count && pauses.IsWithin(now[first])) first--;
        var changed = now.Count - first;
        if (changed is 0 or > 4 || first < 2 * changed
            || now.Skip(first).Any(e => e.IsRest || e.Shape is not null || e.Notes.Any(n => n.IsTiedFromBefore))) return false;
        teller.Hand = teller.Hand.Moved();
        foreach (var item in was.Take(first)) teller.Hand = teller.Hand.After(item);
        // The listener's hand is where the bar that was pointed at left it.
        if (teller.PlaceOf(was[first - 1]) is { } place
            && teller.PlaceOf(was[^1]) == place) teller.Hand = teller.Hand with { Place = place };
        teller.Breaths.Lead($"{same}, but end {(changed < 3 ? "on" : "with")}");
        new StrandTeller(teller, riff.Bars[bar].Meter, null).Tell([.. now.Skip(first)]);
        return true;
    }

    // "Same again, but with the lift shape", or "but first with the lift shape, then with the gate shape": nothing but named shapes is struck in either bar, in the same way.
    private bool TryShapeOn(int bar, int from)
    {
        var (before, now) = (riff.Content[from], riff.Content[bar]);
        if (!IsPlainBar(bar) || before.Strands.Count != 1 || now.Strands.Count != 1 || before.Neck != now.Neck) return false;
        var (was, its) = (before.Strands[0], now.Strands[0]);
        if ((was.Kind, was.Start, was.Events.Count) != (its.Kind, its.Start, its.Events.Count)) return false;
        if (NamedShapes(was.Events) is not { } first || NamedShapes(its.Events) is not { } second || first.Count != second.Count || first == second) return false;
        if (!ShapeOn.Of(was.Events.Items, ShapeOn.Struck(its.Events).Items).Select(Unfingered).SequenceEqual(its.Events.Select(Unfingered))) return false;
        string[] names = [.. second.Select(name => $"with the {SpokenName.OfShape(name)} shape")];
        var sentence = $"{BarNames([bar])}: same {(from == bar - 1 ? "again" : "as " + BarNames([from]))}, but {(names.Length == 1 ? "" : "first ")}{string.Join(", then ", names)}";
        if (sentence.Count(c => c == ' ') >= Breaths.Limit) return false;
        DefineShapes(now);
        teller.Breaths.Say(sentence);
        teller.Hand = Follow(now) with { Shape = its.Events.First(e => e.Shape == second[^1]).Notes };
        return true;
    }

    // The shapes that are struck, in order, each twice or more on the whole; null where there is more to it.
    private ValueList<string>? NamedShapes(ValueList<Event> events)
    {
        var struck = events.Where(e => !e.IsRest).ToArray();
        if (!Array.TrueForAll(struck, IsNamedShape)) return null;
        var names = struck.Select(e => e.Shape!).Distinct().ToValueList();
        return names.Count is > 0 and <= MostShapesOn && struck.Length >= 2 * names.Count && names.Count == ShapeOn.Struck(struck).Count ? names : null;
    }

    private bool IsNamedShape(Event item) => item.Shape is { } name && context.ShapeOn(name, riff.Neck) is { } notes && ShapeWords.IsCompact(notes)
        && item.Graces.Count == 0 && ShapeWords.IsPlain(item) && item.Notes[0].Attack == Attack.Picked
        && item.Notes.Select(n => (n.String, n.Fret)).SequenceEqual(notes.Select(n => (n.String, n.Fret)));

    private static Event Unfingered(Event item) => SpokenForm.Of(item with { Notes = [.. item.Notes.Select(n => n with { Finger = null })] }, Detail.NoteByNote);

    private int TellWhole(int bar)
    {
        var content = riff.Content[bar];
        teller.Hand = teller.Hand with { Again = [], Harmonic = null };
        if (forms.Length > 1 || riff.Bars[bar].StartsEnding
            || riff.Bars[bar].IsPickup) teller.Breaths.Say(BarNames([bar]) + Ending(riff.Bars[bar]));
        if (content.IsRest)
        {
            teller.Breaths.Say("Rest for the whole bar");
            return 1;
        }
        DefineShapes(content);
        var lines = content.Strands.Count > 1 || content.Strands[0].Kind != StrandKind.Main;
        if (!lines) SetMutes(content);
        var landing = bar == forms.Length - 1 ? Landing(content, riff.Bars[bar].Meter) : null;
        foreach (var strand in content.Strands)
        {
            if (lines && detail == Detail.WalkThrough && IsSameAsBefore(bar, strand))
            {
                teller.Breaths.Say(StrandName(strand) + " stays the same");
                continue;
            }
            if (lines) EnterStrand(strand);
            new StrandTeller(teller, riff.Bars[bar].Meter, landing).Tell(strand.Events);
        }
        if (lines) teller.Hand = teller.Hand.Moved() with { Last = default, PalmMuted = false, Ringing = false };
        return 1;
    }

    // Each of several lines says for itself whether it rings or is muted.
    private void EnterStrand(Strand strand)
    {
        var notes = Struck(strand.Events);
        var muted = notes.Length > 0 && notes.All(n => n.IsPalmMuted);
        var ringing = !muted && RingsFree(notes);
        teller.Hand = teller.Hand.Moved() with { Last = default, PalmMuted = muted, Ringing = ringing };
        teller.Breaths.Say(StrandName(strand) + (muted ? ", palm-muted" : ringing ? ", ringing" : ""));
    }

    private bool IsSameAsBefore(int bar, Strand strand)
    {
        if (bar == 0 || strand.Events.Any(e => e.Notes.Any(n => n.IsTiedFromBefore))
            || riff.Content[bar - 1].Strands.Count < 2) return false;
        var before = riff.Content[bar - 1].Strands.Where(s => s.Kind == strand.Kind).ToArray();
        return before.Length == 1 && riff.Content[bar].Strands.Count(s => s.Kind == strand.Kind) == 1 && before[0].Start == strand.Start
            && before[0].Events.Select(e =>
                SpokenForm.Of(e, Detail.NoteByNote)).SequenceEqual(strand.Events.Select(e => SpokenForm.Of(e, Detail.NoteByNote)));
    }

    private static Note[] Struck(IEnumerable<Event> events) =>
        [.. events.SelectMany(e => e.Graces.Concat(e.Notes)).Where(n => n.Attack != Attack.Held)];

    private static bool RingsFree(Note[] notes) => notes.Any(NoteWords.RingsFree) && notes.Where(NoteWords.RingsFree).All(n => n.LetsRing);

    internal static Event? Landing(PartBar content, Meter meter) =>
        content.Strands[0].Events.LastOrDefault(e => !e.IsRest) is { } last && last.Duration >= Beats.Of(4, meter.Unit) ? last : null;

    private static string StrandName(Strand strand)
    {
        var name = strand.Kind switch
        {
            StrandKind.Bass => "the bass underneath",
            StrandKind.Drone => "the drone underneath",
            StrandKind.Top => "the top line",
            _ => "the main line",
        };
        return strand.Start.IsZero ? name : $"{name}, coming in after {LengthWords.Offset(strand.Start)}";
    }

    // Said once where it holds for every note of a bar, and taken back where it no longer does.
    private void SetMutes(PartBar content)
    {
        var notes = Struck(content.Strands.SelectMany(s => s.Events));
        var muted = notes.Length > 2 && notes.All(n => n.IsPalmMuted);
        var ringing = notes.Any(NoteWords.RingsFree) ? RingsFree(notes) && (notes.Length > 2 || teller.Hand.Ringing) : teller.Hand.Ringing;
        if (teller.Hand.PalmMuted && !muted) teller.Breaths.Say("Lift the palm");
        if (!teller.Hand.PalmMuted && muted) teller.Breaths.Say("Palm-mute everything");
        if (teller.Hand.Ringing && !ringing) teller.Breaths.Say("No more ringing");
        if (!teller.Hand.Ringing && ringing) teller.Breaths.Say("Let everything ring");
        teller.Hand = teller.Hand with { PalmMuted = muted, Ringing = ringing };
    }

    private void DefineShapes(PartBar content)
    {
        foreach (var item in content.Strands.SelectMany(s => s.Events))
        {
            if (item.Shape is not { } name || teller.Hand.Named.ContainsKey(name)) continue;
            var notes = context.ShapeOn(name, riff.Neck) ?? (ShapeWords.IsPlain(item) ? item.Notes : default);
            if (!ShapeWords.IsCompact(notes)) continue;
            // The fingers it is first struck with are told with it.
            if (ShapeWords.IsPlain(item) && ShapeWords.Stops(item.Notes, Detail.WalkThrough) == ShapeWords.Stops(notes, Detail.WalkThrough)) notes = item.Notes;
            teller.Hand = teller.Hand with { Named = teller.Hand.Named.SetItem(name, notes) };
            teller.Breaths.Say($"The {SpokenName.OfShape(name)} shape, from the {teller.Strings.One(notes[0].String)} up: {ShapeWords.Frets(notes)}");
            if (detail == Detail.NoteByNote && ShapeWords.Fingers(notes) is { } fingers) teller.Breaths.Say(fingers);
            // A C shape need not be called C major.
            if (context.ChordOf(name) is { } chord && chord != SpokenName.OfShape(name) && chord != SpokenName.OfShape(name) + " major") teller.Breaths.Say($"That is {chord}");
        }
    }

    private Hand Follow(PartBar content)
    {
        var hand = teller.Hand.Moved() with { Last = default };
        if (content.Strands.Count != 1) return hand;
        return content.Strands[0].Events.Aggregate(hand, (h, e) => h.After(e));
    }

    private void TellRepeats()
    {
        var first = 0;
        for (var bar = 0; bar < riff.Bars.Count; bar++)
        {
            if (riff.Bars[bar].StartsRepeat) first = bar;
            if (riff.Bars[bar].RepeatCount < 2) continue;
            var all = first == 0 && bar == riff.Bars.Count - 1;
            teller.Breaths.Say($"Play {(all ? "all of it" : Range(first, bar - first + 1).ToLowerInvariant())} {NumberWords.Times(riff.Bars[bar].RepeatCount)}");
            first = bar + 1;
        }
    }

    private string Range(int bar, int count)
    {
        if (count == 1) return BarNames([bar]);
        return count == 2 ? BarNames([bar, bar + 1]) : $"bars {Number(bar)} to {Number(bar + count - 1)}";
    }

    private string BarNames(int[] bars)
    {
        if (bars.Length == 1) return riff.Bars[bars[0]].IsPickup ? "the pickup" : "bar " + Number(bars[0]);
        return "bars " + string.Join(", ", bars[..^1].Select(Number)) + " and " + Number(bars[^1]);
    }

    // Counted by place, so that a pickup does not shift what is pointed at.
    private string Number(int bar) => NumberWords.Of(bar + 1);

    private static string Ending(Bar bar)
    {
        if (!bar.StartsEnding) return "";
        return bar.EndingPasses is [var one] ? $", the {NumberWords.Ordinal(one)} ending"
            : ", the ending for passes " + string.Join(" and ", bar.EndingPasses.Select(p => NumberWords.Of(p)));
    }
}
