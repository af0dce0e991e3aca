using System.Collections.Immutable;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>Turns what a part plays in its bars into slots, bar after bar: heads with accidentals, beams, stems.</summary>
internal sealed class MeasureParts(StaffPlan staff, SongReading reading, ChordShapes shapes)
{
    private readonly AccidentalMemory memory = new();

    /// <summary>True when a part's bar shows nothing but a rest.</summary>
    public static bool Rests(PartBar bar) => bar.Repeats == 0 && bar.RoadMap is null && !HasMusic(bar);

    public static Beats[] TimesOf(PartBar bar, Bar shared)
    {
        if (bar.Repeats > 0) return [Beats.Zero];
        if (!HasMusic(bar)) return bar.RoadMap is null ? [] : SlashTimes(shared);
        return [.. bar.Strands.SelectMany(s => s.Events).Select(e => e.Start)];
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
        if (source.Repeats > 0 || !HasMusic(source)) return new MeasurePart(source, []);

        var strands = source.Strands.Where(s => s.Events.Count > 0).OrderBy(s => s.Kind == StrandKind.Top ? -1 : (int)s.Kind).ToArray();
        var heads = HeadsOf(strands);
        var voices = ImmutableArray.CreateBuilder<Voice>(strands.Length);
        for (var v = 0; v < strands.Length; v++)
        {
            var rule = strands.Length == 1 ? StemSide.None : v == 0 ? StemSide.Up : StemSide.Down;
            voices.Add(VoiceOf(strands[v], rule, measure, shared, columns, heads[v]));
        }
        return new MeasurePart(source, strands.Length > 1 ? VoiceShifts.Apart(voices.ToImmutable()) : voices.ToImmutable());
    }

    // Accidentals are met in time order, whichever voice they are in.
    private (ImmutableArray<Head> Graces, ImmutableArray<Head> Notes)[][] HeadsOf(Strand[] strands)
    {
        var heads = strands.Select(s => new (ImmutableArray<Head>, ImmutableArray<Head>)[s.Events.Count]).ToArray();
        var order = strands.SelectMany((s, v) => s.Events.Select((e, i) => (Event: e, Voice: v, Index: i)));
        if (strands.Length > 1) order = order.OrderBy(o => o.Event.Start).ThenBy(o => o.Voice);
        foreach (var (item, voice, index) in order)
        {
            heads[voice][index] = (
                [.. item.Graces.Select(n => HeadOf(n, ValueBase.Eighth))],
                [.. item.Notes.Select(n => HeadOf(n, item.Value.Base)).OrderBy(h => h.Position)]);
        }
        return heads;
    }

    private Head HeadOf(Note note, ValueBase value)
    {
        var pitch = reading.SpellingOf(note.Id);
        var accidental = note.IsDead ? null : memory.Print(pitch, note.IsTiedFromBefore);
        return new Head(note, staff.Clef.PositionOf(pitch), Signs.HeadOf(note, value), accidental);
    }

    private Voice VoiceOf(
        Strand strand, StemSide rule, int measure, Bar shared, ImmutableArray<Column> columns, (ImmutableArray<Head> Graces, ImmutableArray<Head> Notes)[] heads)
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
            slots.Add(new Slot
            {
                Event = events[i],
                Measure = measure,
                Column = column,
                Graces = heads[i].Graces,
                Heads = heads[i].Notes,
                Stem = stem,
                Beam = beamOf[i],
                Shape = shapes.Of(heads[i].Notes, stem, value.Dots, beamOf[i] < 0 ? Slot.FlagsOf(value.Base) : 0, rule == StemSide.Down),
            });
        }
        return new Voice(strand.Kind, rule, slots.MoveToImmutable(), beams, TupletGroups.Of(events, beams));
    }

    // Gould: the head furthest from the middle line decides; down when they are as far or all in the middle.
    private static StemSide SideOf(ReadOnlySpan<(ImmutableArray<Head> Graces, ImmutableArray<Head> Notes)> chords)
    {
        int above = 0, below = 0, balance = 0;
        foreach (var (_, notes) in chords)
        {
            if (notes.IsEmpty) continue;
            above = Math.Max(above, notes[^1].Position - 4);
            below = Math.Max(below, 4 - notes[0].Position);
            balance += notes[^1].Position - 4 + notes[0].Position - 4;
        }
        if (above != below) return above > below ? StemSide.Down : StemSide.Up;
        return chords.Length > 1 && balance < 0 ? StemSide.Up : StemSide.Down;
    }

    private static bool HasMusic(PartBar bar)
    {
        foreach (var strand in bar.Strands)
        {
            foreach (var item in strand.Events)
            {
                if (!item.IsRest || item.IsAirStroke || item.Words is not null || item.Dynamic is not null || item.ChordSymbol is not null) return true;
            }
        }
        return false;
    }
}
