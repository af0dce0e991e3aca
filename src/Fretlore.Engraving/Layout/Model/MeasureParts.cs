using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>Turns what a part plays in its bars into slots, bar after bar: heads with accidentals, beams, stems.</summary>
internal sealed class MeasureParts(StaffPlan staff, SongReading reading, ChordShapes shapes, SharedColumns columnsOfVoices)
{
    private readonly AccidentalMemory memory = new();

    /// <summary>True when a part's bar shows nothing but a rest.</summary>
    public static bool Rests(PartBar bar) => bar.Repeats == 0 && bar.RoadMap is null && !HasMusic(bar);

    /// <summary>Adds the times at which something starts in a part's bar.</summary>
    public static void AddTimes(PartBar bar, Bar shared, List<Beats> times)
    {
        if (bar.Repeats > 0)
        {
            times.Add(Beats.Zero);
        }
        else if (HasMusic(bar))
        {
            foreach (var strand in bar.Strands)
            {
                foreach (var item in strand.Events) times.Add(item.Start);
            }
        }
        else if (bar.RoadMap is not null)
        {
            times.AddRange(SlashTimes(shared));
        }
    }

    /// <summary>Where the slashes of a free bar stand: on its beats.</summary>
    public static Beats[] SlashTimes(Bar shared)
    {
        var times = new List<Beats>();
        var at = Beats.Zero;
        foreach (var group in shared.Meter.Groups)
        {
            if (at >= shared.Length) break;
            times.Add(at);
            at += Beats.Of(4, shared.Meter.Unit) * group;
        }
        return [.. times];
    }

    public MeasurePart Next(int measure, int bar, Bar shared, ImmutableArray<Column> columns)
    {
        memory.StartBar(shared.Key?.Signature ?? 0);
        var source = staff.Part.Bars[bar];
        var before = bar > 0 ? staff.Part.Bars[bar - 1].Neck.Capo : staff.Part.Neck.Capo;
        Capo? moved = source.Neck.Capo == before ? null : source.Neck.Capo;
        if (source.Repeats > 0 || !HasMusic(source)) return new MeasurePart(source, []) { NewCapo = moved };

        var strands = StrandsOf(source);
        var heads = HeadsOf(strands, source.Neck, shared.Key);
        var voices = ImmutableArray.CreateBuilder<Voice>(strands.Length);
        for (var v = 0; v < strands.Length; v++)
        {
            var rule = strands.Length == 1 ? StemSide.None : v == 0 ? StemSide.Up : StemSide.Down;
            voices.Add(VoiceOf(strands[v], rule, measure, shared, columns, heads[v]));
        }
        return new MeasurePart(source, strands.Length > 1 ? columnsOfVoices.Apart(voices.ToImmutable()) : voices.ToImmutable()) { NewCapo = moved };
    }

    // Those with events, the highest voice first.
    private static Strand[] StrandsOf(PartBar bar)
    {
        if (bar.Strands.Count == 1) return [bar.Strands[0]];
        return [.. bar.Strands.Where(s => s.Events.Count > 0).OrderBy(s => s.Kind == StrandKind.Top ? -1 : (int)s.Kind)];
    }

    // Accidentals are met in time order, whichever voice they are in.
    private SlotHeads[][] HeadsOf(Strand[] strands, Neck neck, Key? key)
    {
        var heads = new SlotHeads[strands.Length][];
        for (var v = 0; v < strands.Length; v++) heads[v] = new SlotHeads[strands[v].Events.Count];
        if (strands.Length == 1)
        {
            for (var i = 0; i < heads[0].Length; i++) heads[0][i] = HeadsOf(strands[0].Events[i], neck, key);
            return heads;
        }
        var order = strands.SelectMany((strand, voice) => strand.Events.Select((item, index) => (Event: item, Voice: voice, Index: index)));
        foreach (var (item, voice, index) in order.OrderBy(o => o.Event.Start).ThenBy(o => o.Voice)) heads[voice][index] = HeadsOf(item, neck, key);
        return heads;
    }

    private SlotHeads HeadsOf(Event item, Neck neck, Key? key)
    {
        var notes = HeadsOf(item.Notes, item.Value.Base, key, lowToHigh: true);
        return new SlotHeads(HeadsOf(item.Graces, ValueBase.Eighth, key, lowToHigh: false), notes, ReachedBy(notes, key), TrilledWith(notes, neck, key));
    }

    private ImmutableArray<Head> HeadsOf(ValueList<Note> notes, ValueBase value, Key? key, bool lowToHigh)
    {
        if (notes.Count == 0) return [];
        var heads = new Head[notes.Count];
        for (var i = 0; i < heads.Length; i++)
        {
            var head = HeadOf(notes[i], value, key);
            var at = i;
            for (; lowToHigh && at > 0 && heads[at - 1].Position > head.Position; at--) heads[at] = heads[at - 1];
            heads[at] = head;
        }
        return ImmutableCollectionsMarshal.AsImmutableArray(heads);
    }

    private Head HeadOf(Note note, ValueBase value, Key? key)
    {
        // A note that is bent before it begins is written as it sounds.
        var pitch = BentPitch.Of(reading.SpellingOf(note.Id), note.Bend?.FromCents ?? 0, key);
        var accidental = note.IsDead ? null : memory.Print(pitch, note.IsTiedFromBefore);
        if (accidental is null && !note.IsDead && !note.IsTiedFromBefore) accidental = memory.Remind(pitch);
        return new Head(note, staff.Clef.PositionOf(pitch), Signs.HeadOf(note, value), accidental);
    }

    private ImmutableArray<ReachedStep> ReachedBy(ImmutableArray<Head> heads, Key? key)
    {
        var all = ImmutableArray<ReachedStep>.Empty;
        var steps = 0;
        foreach (var head in heads) steps = Math.Max(steps, head.Note.Bend?.ToCents.Count ?? 0);
        for (var step = 0; step < steps; step++)
        {
            var reached = new List<(int Of, Head Sign)>();
            for (var i = 0; i < heads.Length; i++)
            {
                var note = heads[i].Note;
                if (note.Bend is not { } bend || step >= bend.ToCents.Count || note.IsDead) continue;
                var before = step == 0 ? bend.FromCents : bend.ToCents[step - 1];
                if (BentPitch.SemitonesOf(bend.ToCents[step]) == BentPitch.SemitonesOf(before)) continue;
                var pitch = BentPitch.Of(reading.SpellingOf(note.Id), bend.ToCents[step], key);
                reached.Add((i, new Head(note, staff.Clef.PositionOf(pitch), HeadShape.Black, memory.Print(pitch, false))));
            }
            if (reached.Count > 0) all = all.Add(StepOf(reached));
        }
        return all;
    }

    private ReachedStep? TrilledWith(ImmutableArray<Head> heads, Neck neck, Key? key)
    {
        List<(int Of, Head Sign)>? trilled = null;
        for (var i = 0; i < heads.Length; i++)
        {
            var note = heads[i].Note;
            if (note.TrillSemitones(neck) is not { } semitones) continue;
            var pitch = BentPitch.Of(reading.SpellingOf(note.Id), semitones * 100, key);
            (trilled ??= []).Add((i, new Head(note, staff.Clef.PositionOf(pitch), HeadShape.Black, memory.Print(pitch, false))));
        }
        return trilled is null ? null : StepOf(trilled);
    }

    private ReachedStep StepOf(List<(int Of, Head Sign)> reached)
    {
        var sorted = reached.OrderBy(r => r.Sign.Position).ToArray();
        ImmutableArray<Head> signs = [.. sorted.Select(r => r.Sign)];
        return new ReachedStep([.. sorted.Select(r => r.Of)], signs, shapes.Of(signs, StemSide.None, 0, 0, false));
    }

    private Voice VoiceOf(
        Strand strand, StemSide rule, int measure, Bar shared, ImmutableArray<Column> columns, SlotHeads[] heads)
    {
        var events = strand.Events;
        var beams = BeamGroups.Of(shared.Meter, shared.IsPickup ? shared.Meter.Length - shared.Length : Beats.Zero, events);
        var beamOf = new int[events.Count];
        Array.Fill(beamOf, -1);
        for (var b = 0; b < beams.Length; b++) Array.Fill(beamOf, b, beams[b].First, beams[b].Last - beams[b].First + 1);

        var slots = ImmutableArray.CreateBuilder<Slot>(events.Count);
        var column = 0;
        for (var i = 0; i < events.Count; i++)
        {
            while (columns[column].Time < events[i].Start) column++;
            var value = events[i].Value;
            var stem = value.Base == ValueBase.Whole || heads[i].Notes.IsEmpty ? StemSide.None
                : rule != StemSide.None ? rule
                : beamOf[i] < 0 ? SideOf(heads.AsSpan(i, 1))
                : SideOf(heads.AsSpan(beams[beamOf[i]].First, beams[beamOf[i]].Last - beams[beamOf[i]].First + 1));
            var shape = shapes.Of(heads[i].Notes, stem, value.Dots, beamOf[i] < 0 ? Slot.FlagsOf(value.Base) : 0, rule == StemSide.Down);
            slots.Add(WithRoomForStrokes(new Slot
            {
                Event = events[i],
                Measure = measure,
                Column = column,
                Graces = heads[i].Graces,
                Heads = heads[i].Notes,
                Reached = heads[i].Reached,
                Trilled = heads[i].Trilled,
                Stem = stem,
                Beam = beamOf[i],
                Shape = shape,
                RightOfColumn = shape.Right + ReachedHeads.WidthOf(heads[i].Reached) + TrilledHeads.WidthOf(heads[i].Trilled),
            }));
        }
        return new Voice(strand.Kind, rule, slots.MoveToImmutable(), beams, TupletGroups.Of(events, beams));
    }

    // Small heads and their slurs begin right of the strokes through a stem on the right.
    private static Slot WithRoomForStrokes(Slot slot)
    {
        if (slot.Stem != StemSide.Up || (slot.Reached.IsEmpty && slot.Trilled is null) || TremoloStrokes.Of(slot) == 0) return slot;
        var more = Math.Max(0, slot.Shape.StemX + TremoloStrokes.HalfWidth - slot.Shape.Right);
        return slot with { Shape = slot.Shape with { Right = slot.Shape.Right + more }, RightOfColumn = slot.RightOfColumn + more };
    }

    // Gould: the head furthest from the middle line decides; down when they are as far or all in the middle.
    private static StemSide SideOf(ReadOnlySpan<SlotHeads> chords)
    {
        int above = 0, below = 0, balance = 0;
        foreach (var (_, notes, _, _) in chords)
        {
            if (notes.IsEmpty) continue;
            above = Math.Max(above, notes[^1].Position - 4);
            below = Math.Max(below, 4 - notes[0].Position);
            balance += notes[^1].Position - 4 + notes[0].Position - 4;
        }
        if (above != below) return above > below ? StemSide.Down : StemSide.Up;
        return chords.Length > 1 && balance < 0 ? StemSide.Up : StemSide.Down;
    }

    private readonly record struct SlotHeads(ImmutableArray<Head> Graces, ImmutableArray<Head> Notes, ImmutableArray<ReachedStep> Reached, ReachedStep? Trilled);

    private static bool HasMusic(PartBar bar)
    {
        foreach (var strand in bar.Strands)
        {
            foreach (var item in strand.Events)
            {
                if (!item.IsRest || item.IsAirStroke || item.Words is not null || item.Dynamic is not null || item.ChordSymbol is not null || item.HasFermata) return true;
            }
        }
        return false;
    }
}
