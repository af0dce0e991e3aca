using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Reading.Chords;
using Fretlore.Reading.Moments;
using Fretlore.Reading.Phrases;
using Fretlore.Score;

namespace Fretlore.Reading.Roles;

/// <summary>Finds what every note of a stretch of music does: against the chord of its moment, and in its own line.</summary>
/// <remarks>Notes of a chord are told by the chord; a short note that is none is a passing, neighbour or approach note when its line says so, else a tension.</remarks>
internal sealed class RoleFinder(ImmutableArray<Key> keys, ValueList<Bar> bars, Pitch[] pitches, NoteRole[] roles)
{
    // A note that lasts longer than a beat does not pass.
    private const double LongestPassing = 1;
    private const int FurthestStep = 2;

    private readonly record struct Place(Event Event, Moment At);

    private readonly record struct Moment(int Index, bool IsOnBeat, ChordReading? Chord);

    internal void Find(ValueList<PartBar> content, LocalHarmony harmony)
    {
        foreach (var line in Lines(content, harmony).Values)
        {
            for (var i = 0; i < line.Count; i++)
            {
                var place = line[i];
                // A grace note leads to its event's note nearest to it.
                foreach (var grace in place.Event.Graces) Settle(grace, RoleOf(grace, place, null, place, isShort: true));
                var before = Neighbour(line, i, -1);
                var after = Neighbour(line, i, 1);
                var isShort = place.Event.Duration.ToDouble() <= LongestPassing && place.Event.Notes.Count <= 2
                    && !(place.At.IsOnBeat && place.Event.Duration.ToDouble() >= LongestPassing);
                foreach (var note in place.Event.Notes) Settle(note, RoleOf(note, place, before, after, isShort));
            }
        }
    }

    // The event before or after; past one that is a leap away, as a note that keeps returning between others is a line of its own. Ties are stepped over.
    private static Place? Neighbour(List<Place> line, int at, int way)
    {
        Place? first = null;
        for (var i = at + way; i >= 0 && i < line.Count; i += way)
        {
            var item = line[i].Event;
            if (item.IsRest) return first;
            if (way > 0 && item.Notes.Items.All(n => n.IsTiedFromBefore)) continue;
            if (first is not null) return IsNear(line[at].Event, item) ? line[i] : first;
            if (IsNear(line[at].Event, item)) return line[i];
            first = line[i];
        }
        return first;
    }

    private static bool IsNear(Event a, Event b)
    {
        foreach (var one in a.Notes)
        {
            foreach (var other in b.Notes)
            {
                if (Math.Abs(one.Sounding - other.Sounding) <= FurthestStep) return true;
            }
        }
        return false;
    }

    private Dictionary<StrandKind, List<Place>> Lines(ValueList<PartBar> content, LocalHarmony harmony)
    {
        var lines = new Dictionary<StrandKind, List<Place>>();
        var grid = new BeatGrid(Meter.FourFour);
        for (var bar = 0; bar < content.Count; bar++)
        {
            if (content[bar].IsRest) continue;
            grid = grid.For(bars[bar].Meter);
            foreach (var strand in content[bar].Strands)
            {
                if (!lines.TryGetValue(strand.Kind, out var line)) lines.Add(strand.Kind, line = []);
                foreach (var item in strand.Events)
                {
                    line.Add(new Place(item, new Moment(bar, grid.IsOnBeat(item.Start), harmony.At(bar, item.Start))));
                }
            }
        }
        return lines;
    }

    private NoteRole RoleOf(Note note, Place place, Place? before, Place? after, bool isShort)
    {
        if (note.IsDead) return new NoteRole(RoleKind.Dead, default);
        var key = keys[place.At.Index];
        var chord = place.At.Chord;
        var heard = HeardPitch.End(note);
        NoteName? reached = heard == note.Sounding ? null : Spell(heard.PitchClass, chord, key);
        var name = reached ?? pitches[note.Id.Index].Name;
        var inKey = KeyNotes.Of(key).Contains(heard.PitchClass);
        if (chord is null)
        {
            var ofKey = Interval.Between(key.Tonic, name);
            if (!inKey && Leading(note, heard, key, before, after, isShort, toTone: false) is { } led) return led with { Degree = ofKey, Reached = reached, IsOfKey = true };
            return new NoteRole(inKey ? RoleKind.KeyNote : RoleKind.Outside, ofKey, null, reached) { IsOfKey = true };
        }
        var degree = Interval.Between(chord.Root, name);
        if (IsTone(heard.PitchClass, degree, chord, out var isTension))
        {
            return new NoteRole(isTension ? RoleKind.Tension : RoleKind.ChordTone, Compound(degree, isTension), null, reached);
        }
        var leading = Leading(note, heard, key, before, after, isShort, toTone: true);
        if (leading is { } role) return role with { Degree = degree, Reached = reached };
        return new NoteRole(inKey ? RoleKind.Tension : RoleKind.Outside, Compound(degree, inKey), null, reached);
    }

    private static bool IsTone(int pitchClass, Interval degree, ChordReading chord, out bool isTension)
    {
        isTension = false;
        var sounds = false;
        foreach (var tone in chord.Notes) sounds |= tone.PitchClass == pitchClass;
        if (chord.Name is not { } name) return sounds;
        var above = NoteName.Wrap(pitchClass - name.Root.PitchClass, 12);
        // The third that a power chord leaves open is the line's to say.
        if (ReferenceEquals(name.Kind.Family, ChordFamilies.Power) && above is 3 or 4) return true;
        if (name.Kind.Family.Tones.Contains(above)) return true;
        isTension = sounds;
        return sounds;
    }

    private static bool IsToneAt(Height goal, Place? place)
    {
        if (place?.At.Chord is not { } chord) return true;
        return IsTone(goal.PitchClass, Interval.Chromatic(NoteName.Wrap(goal.PitchClass - chord.Root.PitchClass, 12)), chord, out var isTension) && !isTension;
    }

    private NoteRole? Leading(Note note, Height heard, Key key, Place? before, Place? after, bool isShort, bool toTone)
    {
        if (!isShort || after is not { } next || Nearest(next.Event, heard, note, atStart: true) is not { } goal) return null;
        var onwards = HeardPitch.Start(goal) - heard;
        if (Math.Abs(onwards) is 0 or > FurthestStep) return null;
        var goalName = goal.Bend is null || HeardPitch.Start(goal) == goal.Sounding ? pitches[goal.Id.Index].Name : Spell(HeardPitch.Start(goal).PitchClass, null, key);
        if (before is { } last && Nearest(last.Event, heard, note, atStart: false) is { } source)
        {
            var here = heard - HeardPitch.End(source);
            if (Math.Abs(here) is 1 or 2 && Math.Sign(here) == Math.Sign(onwards)) return new NoteRole(RoleKind.PassingTone, default, goalName);
            if (here == -onwards) return new NoteRole(RoleKind.NeighbourTone, default, goalName);
        }
        return Math.Abs(onwards) == 1 && (!toTone || IsToneAt(HeardPitch.Start(goal), after)) ? new NoteRole(RoleKind.ApproachNote, default, goalName) : null;
    }

    private static Note? Nearest(Event item, Height to, Note not, bool atStart)
    {
        Note? nearest = null;
        var distance = int.MaxValue;
        foreach (var note in item.Notes)
        {
            if (note.IsDead || note.Id == not.Id) continue;
            var away = Math.Abs((atStart ? HeardPitch.Start(note) : HeardPitch.End(note)) - to);
            if (away >= distance) continue;
            nearest = note;
            distance = away;
        }
        return nearest;
    }

    private static NoteName Spell(int pitchClass, ChordReading? chord, Key key)
    {
        if (chord is not null)
        {
            foreach (var tone in chord.Notes)
            {
                if (tone.PitchClass == pitchClass && Math.Abs(tone.Alteration) < 2) return tone;
            }
        }
        return RootSpelling.InKey(pitchClass, key);
    }

    // Second, fourth and sixth above a chord are its ninth, eleventh and thirteenth.
    private static Interval Compound(Interval degree, bool isTension) =>
        isTension && degree.Steps is 1 or 3 or 5 ? new Interval(degree.Steps + 7, degree.Semitones + 12) : degree;

    private void Settle(Note note, NoteRole role)
    {
        if ((uint)note.Id.Index < (uint)roles.Length) roles[note.Id.Index] = role;
    }
}
