using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading.Moments;
using Fretlore.Score;

namespace Fretlore.Reading.Spelling;

/// <summary>Spells every note of a part and finds its degree above the local root.</summary>
internal static class NoteSpeller
{
    internal static void Spell(ValueList<PartBar> bars, ImmutableArray<Key> keys, LocalHarmony harmony, Pitch[] pitches, Interval[] degrees)
    {
        var held = new Pitch?[32];
        for (var bar = 0; bar < bars.Count; bar++)
        {
            var speller = new Speller(keys[bar]);
            foreach (var strand in bars[bar].Strands)
            {
                var events = strand.Events;
                for (var i = 0; i < events.Count; i++)
                {
                    var chord = harmony.At(bar, events[i].Start);
                    var next = i + 1 < events.Count && events[i + 1].Notes.Count > 0 ? events[i + 1].Notes[^1].Sounding : (Height?)null;
                    var root = chord?.Root ?? keys[bar].Tonic;
                    foreach (var note in events[i].Graces) Write(note, events[i].Notes.Count > 0 ? events[i].Notes[^1].Sounding : next);
                    foreach (var note in events[i].Notes) Write(note, next);

                    void Write(Note note, Height? goal)
                    {
                        var number = note.String.Value & 31;
                        // A tied note keeps its name, whatever the chord has become.
                        var pitch = note.IsTiedFromBefore && held[number] is { } before && before.Height == note.Sounding
                            ? before
                            : speller.Spell(note.Sounding, chord, goal);
                        held[number] = pitch;
                        if ((uint)note.Id.Index >= (uint)pitches.Length) return;
                        pitches[note.Id.Index] = pitch;
                        degrees[note.Id.Index] = Interval.Between(root, pitch.Name);
                    }
                }
            }
        }
    }
}
