using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Reading.Moments;
using Fretlore.Score;

namespace Fretlore.Reading.Spelling;

/// <summary>Spells every note of a stretch of music and finds its degree above the local root.</summary>
/// <param name="keys">The key of each bar.</param>
/// <param name="bars">The bars.</param>
/// <param name="expected">About how many notes there will be, so that their list need not grow.</param>
internal sealed class NoteSpeller(ImmutableArray<Key> keys, ValueList<Bar> bars, int expected)
{
    // The key's seven notes lie from one fifth below its major tonic to five above; the window around them from three below to eight above.
    private const int CentreAbove = 2;
    private const int LowestBelow = 3;

    // A chord this cheap has no tension or one inversion at most; dearer names, and roots that are no notes of the key, say less about spelling.
    private const double PlainChord = 0.5;

    private readonly List<SpelledNote> notes = new(expected);

    /// <summary>Takes in what a part plays.</summary>
    internal void Add(ValueList<PartBar> content, LocalHarmony harmony)
    {
        var sounding = new SpelledNote?[32];
        var lines = new Dictionary<StrandKind, (int From, int To)>();
        var start = 0.0;
        for (var bar = 0; bar < content.Count; bar++)
        {
            foreach (var strand in content[bar].Strands)
            {
                foreach (var item in strand.Events)
                {
                    var chord = harmony.At(bar, item.Start);
                    var time = start + item.Start.ToDouble();
                    foreach (var grace in item.Graces)
                    {
                        Take(grace, time, 0, bar, chord, sounding);
                        Link(strand.Kind, lines, notes.Count - 1);
                    }
                    if (item.IsRest) continue;
                    var (first, length) = (notes.Count, item.Duration.ToDouble());
                    foreach (var note in item.Notes) Take(note, time, length, bar, chord, sounding);
                    Link(strand.Kind, lines, first);
                }
            }
            start += bars[bar].Length.ToDouble();
        }
    }

    /// <summary>Decides, and writes every note's pitch and degree at its id.</summary>
    internal void Settle(Pitch[] pitches, Interval[] degrees)
    {
        notes.Sort(static (a, b) => a.Time == b.Time ? a.Note.Sounding.CompareTo(b.Note.Sounding) : a.Time.CompareTo(b.Time));
        LineOfFifths.Settle(notes);
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

    private void Take(Note note, double time, double length, int bar, ChordReading? chord, SpelledNote?[] sounding)
    {
        var key = keys[bar];
        var pitchClass = note.Sounding.PitchClass;
        var usual = At(pitchClass, key.Signature - LowestBelow);
        var byChord = Spelled(pitchClass, chord);
        var before = sounding[note.String.Value & 31];
        var inKey = KeyNotes.Of(key);
        var taken = new SpelledNote
        {
            Note = note,
            Time = time,
            Weight = Math.Min(2, 0.25 + length),
            Centre = key.Signature + CentreAbove,
            ByChord = chord?.Cost <= PlainChord && inKey.Contains(chord.Root.PitchClass) ? byChord : null,
            IsInKey = inKey.Contains(pitchClass),
            Root = chord?.Root ?? key.Tonic,
            Fifths = usual,
            TiedFrom = note.IsTiedFromBefore && before?.Note.Sounding == note.Sounding ? before : null,
        };
        sounding[note.String.Value & 31] = taken;
        notes.Add(taken);
    }

    // As the chord has it; double signs are for theory, on the page the key's plain name is read faster.
    private static int? Spelled(int pitchClass, ChordReading? chord)
    {
        if (chord is null) return null;
        foreach (var name in chord.Notes)
        {
            if (name.PitchClass == pitchClass && Math.Abs(name.Alteration) < 2) return name.Fifths;
        }
        return null;
    }

    // The place at or above the lowest that sounds as the pitch class: a fifth is seven semitones.
    private static int At(int pitchClass, int lowest) => lowest + NoteName.Wrap(pitchClass * 7 - lowest, 12);

    // The notes from the first one on start together; they follow those that came last in their strand.
    private void Link(StrandKind strand, Dictionary<StrandKind, (int From, int To)> lines, int first)
    {
        if (lines.TryGetValue(strand, out var before))
        {
            for (var i = before.From; i < before.To; i++)
            {
                var note = notes[i];
                for (var j = first; j < notes.Count; j++)
                {
                    var next = notes[j];
                    if (Math.Abs(note.Note.Sounding - next.Note.Sounding) != 1) continue;
                    (note.Goals ??= []).Add(next);
                    (next.Sources ??= []).Add(note);
                }
            }
        }
        lines[strand] = (first, notes.Count);
    }
}
