using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Scales;
using Fretlore.Reading.Chords;
using Fretlore.Reading.Scales;
using Fretlore.Score;

namespace Fretlore.Reading.Phrases;

/// <summary>Splits a part into phrases and finds the scales of each.</summary>
internal static class PhraseReader
{
    internal static ImmutableArray<PhraseReading> Read(Song song, int part, ImmutableArray<Key> keys)
    {
        var phrases = ImmutableArray.CreateBuilder<PhraseReading>();
        var bars = song.Parts[part].Bars;
        var starts = Starts(song, part, keys);
        for (var first = 0; first < bars.Count;)
        {
            var next = first + 1;
            while (next < bars.Count && !starts.Contains(next)) next++;
            var scales = bars[first].RoadMap is { } map ? Stated(song, map) : Find(bars, first, next, keys[first]);
            if (!scales.IsEmpty) phrases.Add(new PhraseReading(first, next - first, scales));
            first = next;
        }
        return phrases.ToImmutable();
    }

    // A phrase begins with a section, a new key, a road map or its end, and after a bar's rest.
    private static HashSet<int> Starts(Song song, int part, ImmutableArray<Key> keys)
    {
        var bars = song.Parts[part].Bars;
        var starts = song.Sections.Select(s => s.FirstBar).ToHashSet();
        for (var bar = 1; bar < bars.Count; bar++)
        {
            if (bars[bar].IsRest != bars[bar - 1].IsRest || bars[bar].RoadMap != bars[bar - 1].RoadMap || keys[bar] != keys[bar - 1]) starts.Add(bar);
        }
        return starts;
    }

    private static ImmutableArray<ScaleReading> Find(ValueList<PartBar> bars, int first, int next, Key key)
    {
        var weights = new NoteWeights { AtHome = KeyNotes.Of(key) };
        Note? opening = null, closing = null, lowest = null;
        for (var bar = first; bar < next; bar++)
        {
            foreach (var strand in bars[bar].Strands)
            {
                foreach (var item in strand.Events)
                {
                    foreach (var note in item.Notes)
                    {
                        if (note.IsDead) continue;
                        HeardPitch.AddTo(weights, note, item.Duration.ToDouble());
                        opening ??= note;
                        closing = note;
                        if (lowest is null || note.Sounding < lowest.Sounding) lowest = note;
                    }
                }
            }
        }
        if (opening is null || closing is null || lowest is null) return [];
        weights.AddRootEvidence(key.Tonic.PitchClass, ScalePricing.KeyTonic);
        weights.AddRootEvidence(opening.Sounding.PitchClass, ScalePricing.FirstNote / 2);
        weights.AddRootEvidence(HeardPitch.End(closing).PitchClass, ScalePricing.LastNote);
        weights.AddRootEvidence(lowest.Sounding.PitchClass, ScalePricing.LowestNote);
        return ScaleFinder.Find(weights, null, pitchClass => RootSpelling.InKey(pitchClass, key));
    }

    // A road map says its scale itself.
    private static ImmutableArray<ScaleReading> Stated(Song song, string roadMap)
    {
        foreach (var map in song.RoadMaps)
        {
            if (map.Name != roadMap || map.RulesOf<ScaleRule>().FirstOrDefault() is not { } scale) continue;
            if (!ScaleTable.TryFind(scale.Name, out var known)) continue;
            return [new ScaleReading(known.Name, scale.Tonic, [], [], $"The road map says {scale.Tonic} {known.Name}.", 0)];
        }
        return [];
    }
}
