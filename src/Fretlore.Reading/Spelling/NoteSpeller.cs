using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading.Moments;
using Fretlore.Score;

namespace Fretlore.Reading.Spelling;

/// <summary>Spells every note of a stretch of music and finds its degree above the local root.</summary>
/// <param name="keys">The key of each bar.</param>
/// <param name="bars">The bars.</param>
/// <param name="table">Costs worked out so far.</param>
/// <param name="expected">About how many notes there will be, so that their list need not grow.</param>
internal sealed class NoteSpeller(ImmutableArray<Key> keys, ValueList<Bar> bars, SpellingTable table, int expected)
{
    // A chord this cheap has one tension at most; dearer names say less about spelling.
    private const double PlainChord = 0.7;

    // Any of its four notes may be its root.
    private static readonly PitchClassSet DiminishedSeventh = PitchClassSet.Of(0, 3, 6, 9);

    // Music prepares a new signature some bars before it is written.
    private const int BarsAhead = 5;

    private readonly List<SpelledNote> notes = new(expected);

    /// <summary>Takes in what a part plays.</summary>
    internal void Add(ValueList<PartBar> content, LocalHarmony harmony)
    {
        var sounding = new SpelledNote?[32];
        var lines = new Dictionary<StrandKind, List<(int From, int To)>>();
        var start = 0.0;
        for (var bar = 0; bar < content.Count; bar++)
        {
            var place = new Place(bar, keys[bar], NextSignature(bar));
            foreach (var strand in content[bar].Strands)
            {
                if (!lines.TryGetValue(strand.Kind, out var line)) lines.Add(strand.Kind, line = []);
                foreach (var item in strand.Events)
                {
                    var chord = harmony.At(bar, item.Start);
                    var time = start + item.Start.ToDouble();
                    foreach (var grace in item.Graces)
                    {
                        line.Add((notes.Count, notes.Count + 1));
                        notes.Add(Take(grace, item, time, 0, place, chord, sounding));
                    }
                    if (item.IsRest) continue;
                    line.Add((notes.Count, notes.Count + item.Notes.Count));
                    foreach (var note in item.Notes) notes.Add(Take(note, item, time, item.Duration.ToDouble(), place, chord, sounding));
                }
            }
            start += bars[bar].Length.ToDouble();
        }
        foreach (var line in lines.Values) Lead(line);
    }

    /// <summary>Decides, and writes every note's pitch and degree at its id.</summary>
    internal void Settle(Pitch[] pitches, Interval[] degrees)
    {
        notes.Sort(static (a, b) => a.Time == b.Time ? a.Note.Sounding.CompareTo(b.Note.Sounding) : a.Time.CompareTo(b.Time));
        if (notes.Count == 0) return;
        var path = new LocalKeyPath().Find(notes, table, keys[0]);
        for (var first = 0; first < notes.Count;)
        {
            var end = first + 1;
            while (end < notes.Count && notes[end].Bar == notes[first].Bar && path[end] == path[first]) end++;
            NameAlike(first, end, path[first]);
            first = end;
        }
        foreach (var note in notes)
        {
            // A tied note keeps its name, whatever the chord has become.
            if (note.TiedFrom is { } before) note.Fifths = before.Fifths;
            var pitch = note.Note.Sounding.Spell(NoteName.FromFifths(note.Fifths));
            if ((uint)note.Note.Id.Index >= (uint)pitches.Length) continue;
            pitches[note.Note.Id.Index] = pitch;
            degrees[note.Note.Id.Index] = Interval.Between(note.Root, pitch.Name);
        }
    }

    private readonly record struct Place(int Bar, Key Key, int NextSignature);

    private static SpelledNote Take(Note note, Event item, double time, double length, Place place, ChordReading? chord, SpelledNote?[] sounding)
    {
        var before = sounding[note.String.Value & 31];
        var pitchClass = note.Sounding.PitchClass;
        var root = -1;
        var above = 0;
        if (chord is { Name.Kind.Family: { } family, Cost: <= PlainChord } && family.Tones != DiminishedSeventh && TryFind(pitchClass, chord, out var tone))
        {
            root = chord.Root.PitchClass;
            above = tone.Fifths - chord.Root.Fifths;
        }
        var taken = new SpelledNote
        {
            Note = note,
            Time = time,
            Bar = place.Bar,
            IsOnBar = item.Start.IsZero,
            IsOnBeat = item.Start.Denominator == 1,
            Weight = WeightOf(note, length),
            Root = chord?.Root ?? place.Key.Tonic,
            Surroundings = new NoteSurroundings(pitchClass, place.Key.Signature, place.NextSignature, root, above, Leading.Nowhere),
            TiedFrom = note.IsTiedFromBefore && before?.Note.Sounding == note.Sounding ? before : null,
        };
        sounding[note.String.Value & 31] = taken;
        return taken;
    }

    // Longer notes say more about the key; what is tied over half as much again, dead notes nothing.
    private static double WeightOf(Note note, double length) =>
        note.IsDead ? 0 : (0.5 + 0.5 * Math.Min(2, length)) * (note.IsTiedFromBefore ? 0.5 : 1);

    private static bool TryFind(int pitchClass, ChordReading chord, out NoteName found)
    {
        foreach (var name in chord.Notes)
        {
            found = name;
            if (name.PitchClass == pitchClass) return true;
        }
        found = default;
        return false;
    }

    private int NextSignature(int bar)
    {
        for (var ahead = bar + 1; ahead <= bar + BarsAhead && ahead < keys.Length; ahead++)
        {
            if (keys[ahead].Signature != keys[bar].Signature) return keys[ahead].Signature;
        }
        return keys[bar].Signature;
    }

    // From the last notes back, so that a note that is repeated or tied leads where its last repetition leads.
    private void Lead(List<(int From, int To)> line)
    {
        for (var i = line.Count - 2; i >= 0; i--)
        {
            for (var a = line[i].From; a < line[i].To; a++)
            {
                var leads = Leading.Nowhere;
                for (var b = line[i + 1].From; b < line[i + 1].To; b++)
                {
                    leads |= (notes[b].Note.Sounding - notes[a].Note.Sounding) switch
                    {
                        0 => notes[b].Surroundings.Leads,
                        1 => Leading.Up,
                        -1 => Leading.Down,
                        _ => Leading.Nowhere,
                    };
                }
                if (leads != Leading.Nowhere) notes[a].Surroundings = notes[a].Surroundings with { Leads = leads };
            }
        }
    }

    // Within a bar of one local key a note has one name, unless one time it rises and another it falls: then only what sounds together has.
    private void NameAlike(int first, int end, int key)
    {
        Span<Leading> leads = stackalloc Leading[12];
        leads.Clear();
        for (var i = first; i < end; i++)
        {
            notes[i].Fifths = table.Of(notes[i].Surroundings).Names[key];
            leads[notes[i].Surroundings.PitchClass] |= notes[i].Surroundings.Leads;
        }
        for (var i = first; i < end; i++)
        {
            var until = leads[notes[i].Surroundings.PitchClass] == (Leading.Up | Leading.Down) ? notes[i].Time : double.PositiveInfinity;
            for (var j = i + 1; j < end && notes[j].Time <= until; j++)
            {
                if (!IsAgain(i, j) || notes[j].Fifths == notes[i].Fifths) continue;
                NameAlike(i, end, until, key);
                break;
            }
        }
    }

    // The cheapest name for all of a note's times together.
    private void NameAlike(int first, int end, double until, int key)
    {
        var (best, least) = (notes[first].Fifths, double.PositiveInfinity);
        foreach (var fifths in SpellingTable.Names(notes[first].Surroundings.PitchClass))
        {
            var cost = 0.0;
            for (var i = first; i < end && notes[i].Time <= until; i++)
            {
                if (IsAgain(first, i)) cost += notes[i].Weight * table.Cost(notes[i].Surroundings, fifths, key);
            }
            if (cost < least) (best, least) = (fifths, cost);
        }
        for (var i = first; i < end && notes[i].Time <= until; i++)
        {
            if (IsAgain(first, i)) notes[i].Fifths = best;
        }
    }

    // What is tied has its name from before.
    private bool IsAgain(int note, int other) =>
        notes[other].Surroundings.PitchClass == notes[note].Surroundings.PitchClass && notes[other].TiedFrom is null;
}
