using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Score;

namespace Fretlore.Reading.Keys;

/// <summary>The keys of a song: as the sheet says, or found from the notes, stretch by stretch.</summary>
internal static class SongKeys
{
    internal static ImmutableArray<KeyStretch> Stretches(Song song)
    {
        var parts = song.Parts.Items.Select(p => p.Bars).ToArray();
        var stretches = ImmutableArray.CreateBuilder<KeyStretch>();
        for (var first = 0; first < song.Bars.Count;)
        {
            var end = first + 1;
            while (end < song.Bars.Count && song.Bars[end].Key == song.Bars[first].Key) end++;
            if (song.Bars[first].Key is { } stated) stretches.Add(new KeyStretch(first, end - first, stated, true, $"The sheet says {stated}."));
            else Find(song, parts, first, end, stretches);
            first = end;
        }
        return stretches.ToImmutable();
    }

    /// <summary>The key of the song as a whole: the first one stated, else the one that all its notes together make.</summary>
    internal static Key Home(Song song) => song.Bars.Items.Select(b => b.Key).FirstOrDefault(k => k is not null)
        ?? Weigh([.. song.Parts.Items.Select(p => p.Bars)], 0, song.Bars.Count).Find()[0].Key;

    internal static ImmutableArray<Key> OfBars(ImmutableArray<KeyStretch> stretches) =>
        [.. stretches.SelectMany(stretch => Enumerable.Repeat(stretch.Key, stretch.BarCount))];

    /// <summary>The bar in which each riff is first used.</summary>
    internal static IReadOnlyDictionary<string, int> FirstUses(Song song)
    {
        var first = new Dictionary<string, int>();
        foreach (var use in song.RiffUses) first.TryAdd(use.Riff, use.FirstBar);
        return first;
    }

    /// <summary>The keys of a riff's own bars: its own, else those of the place it is first used.</summary>
    internal static ImmutableArray<Key> Of(ImmutableArray<Key> songKeys, Riff riff, IReadOnlyDictionary<string, int> firstUses)
    {
        Key around;
        if (firstUses.TryGetValue(riff.Name, out var bar) && bar < songKeys.Length) around = songKeys[bar];
        else around = songKeys.IsEmpty ? Weigh([riff.Content], 0, riff.Content.Count).Find()[0].Key : songKeys[0];
        return [.. riff.Bars.Items.Select(own => own.Key ?? around)];
    }

    // The changes say only where; each stretch is then read by itself, so that its mode and tonic come from its own notes.
    private static void Find(Song song, ValueList<PartBar>[] parts, int first, int end, ImmutableArray<KeyStretch>.Builder stretches)
    {
        var whole = Weigh(parts, first, end);
        var home = whole.Find()[0].Key;
        var starts = KeyChanges.Find(parts, first, end, home);
        for (var i = 0; i < starts.Count; i++)
        {
            var stop = i + 1 < starts.Count ? starts[i + 1] : end;
            var key = starts.Count == 1 ? home : Weigh(parts, starts[i], stop).Find()[0].Key;
            foreach (var (from, until, own) in SectionKeys.Of(song, starts[i], stop, key, (a, b) => Weigh(parts, a, b))) Add(stretches, parts, first, from, until, own);
        }
    }

    private static void Add(ImmutableArray<KeyStretch>.Builder stretches, ValueList<PartBar>[] parts, int first, int from, int until, Key key)
    {
        if (from > first && stretches[^1].Key == key)
        {
            from = stretches[^1].FirstBar;
            stretches.RemoveAt(stretches.Count - 1);
        }
        stretches.Add(new KeyStretch(from, until - from, key, false, Reason(Weigh(parts, from, until), key)));
    }

    private static BarWeights Weigh(IReadOnlyList<ValueList<PartBar>> parts, int first, int end)
    {
        var weights = new BarWeights();
        foreach (var bars in parts)
        {
            for (var bar = first; bar < end && bar < bars.Count; bar++) weights.Add(bars[bar]);
        }
        return weights;
    }

    private static string Reason(BarWeights weights, Key key)
    {
        if (weights.First < 0) return $"Nothing sounds here, so {key} stands for no signs at all.";
        var inside = 0.0;
        foreach (var pitchClass in KeyNotes.Of(key)) inside += weights.Notes.Share(pitchClass);
        var clauses = new List<string> { $"{Percent(inside)} of what sounds are its notes" };
        var bass = weights.Bass.Share(key.Tonic.PitchClass);
        if (bass > 0.1) clauses.Add($"{key.Tonic} is the lowest note for {Percent(bass)} of the time");
        var opens = weights.First == key.Tonic.PitchClass;
        var closes = weights.Last == key.Tonic.PitchClass;
        if (opens || closes) clauses.Add(opens && closes ? $"it begins and ends on {key.Tonic}" : opens ? $"it begins on {key.Tonic}" : $"it ends on {key.Tonic}");
        return $"Read as {key}: {Spoken.Listed(clauses)}.";
    }

    private static string Percent(double share) => Math.Round(100 * share).ToString(CultureInfo.InvariantCulture) + "%";
}
