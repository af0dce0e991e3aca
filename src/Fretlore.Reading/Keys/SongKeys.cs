using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading.Phrases;
using Fretlore.Score;

namespace Fretlore.Reading.Keys;

/// <summary>The key of each bar: as the sheet says, or one found for the song.</summary>
internal static class SongKeys
{
    private const double FirstBass = 0.12;
    private const double LastBass = 0.2;
    private const double BassShare = 0.3;

    internal static ImmutableArray<Key> Of(Song song)
    {
        Key? found = null;
        var keys = ImmutableArray.CreateBuilder<Key>(song.Bars.Count);
        foreach (var bar in song.Bars) keys.Add(bar.Key ?? (found ??= Find(song.Parts.Items.Select(p => p.Bars))));
        return keys.ToImmutable();
    }

    /// <summary>The keys of a riff's own bars: its own, else those of the place it is first used.</summary>
    internal static ImmutableArray<Key> Of(Song song, ImmutableArray<Key> songKeys, Riff riff)
    {
        var use = song.RiffUses.Items.FirstOrDefault(u => u.Riff == riff.Name);
        Key around;
        if (use is not null && use.FirstBar < songKeys.Length) around = songKeys[use.FirstBar];
        else around = songKeys.IsEmpty ? Find([riff.Content]) : songKeys[0];
        return [.. riff.Bars.Items.Select(bar => bar.Key ?? around)];
    }

    private static Key Find(IEnumerable<ValueList<PartBar>> parts)
    {
        var weights = new NoteWeights();
        var bass = new NoteWeights();
        Note? first = null, last = null;
        foreach (var bars in parts)
        {
            foreach (var bar in bars)
            {
                foreach (var strand in bar.Strands)
                {
                    foreach (var item in strand.Events) Weigh(item, weights, bass, ref first, ref last);
                }
            }
        }
        if (first is not null && last is not null)
        {
            weights.AddRootEvidence(first.Sounding.PitchClass, FirstBass);
            weights.AddRootEvidence(HeardPitch.End(last).PitchClass, LastBass);
            foreach (var pitchClass in bass.Set) weights.AddRootEvidence(pitchClass, BassShare * bass.Share(pitchClass));
        }
        return KeyFinder.Find(weights)[0].Key;
    }

    private static void Weigh(Event item, NoteWeights weights, NoteWeights bass, ref Note? first, ref Note? last)
    {
        var length = item.Duration.ToDouble();
        Note? lowest = null;
        foreach (var note in item.Notes)
        {
            if (note.IsDead) continue;
            HeardPitch.AddTo(weights, note, length);
            lowest ??= note;
        }
        if (lowest is null) return;
        bass.Add(lowest.Sounding.PitchClass, length);
        first ??= lowest;
        last = lowest;
    }
}
