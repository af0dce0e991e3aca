using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Scales;
using Fretlore.Reading.Scales;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Proposing;

/// <summary>Finds the scale of takes where they are free: one, or one and then another.</summary>
internal static class ScaleProposer
{
    // What sounds for a smaller share of the time is on its way to another note.
    private const double Passing = 0.02;

    // No scale of the table that players name has more notes.
    private const int MostNotes = 8;

    // A scale rarer than harmonic minor and the like is no solo's scale but a chance of its notes.
    private const double Rare = 1.0;

    /// <summary>The rules; none where no scale of the table holds the notes.</summary>
    public static ImmutableArray<RoadMapRule> Find(TakeSet takes)
    {
        var count = takes.Use.BarCount;
        if (Of(takes, 1, count) is { } one) return [one with { Bars = null }];
        // The first place to change at where each side has its scale; the fewest notes win.
        (ScaleRule, ScaleRule)? best = null;
        var fewest = int.MaxValue;
        for (var bar = 2; bar <= count; bar++)
        {
            if (Of(takes, 1, bar - 1) is not { } before || Of(takes, bar, count) is not { } after || Size(before) + Size(after) >= fewest) continue;
            (best, fewest) = ((before, after), Size(before) + Size(after));
        }
        return best is { } both ? [both.Item1, both.Item2] : [];
    }

    // "major" and "minor" rather than the modes' names.
    private static string Usual(Scale scale) => scale.Name switch { "Ionian" => "major", "Aeolian" => "minor", _ => scale.Name.ToLowerInvariant() };

    private static int Size(ScaleRule rule) => ScaleTable.TryFind(rule.Name, out var scale) ? scale.Tones.Count : 12;

    private static ScaleRule? Of(TakeSet takes, int first, int last)
    {
        var moments = takes.Free.Where(m => m.Bar >= first && m.Bar <= last).ToList();
        var shares = new double[12];
        foreach (var moment in moments) shares[NoteName.Wrap(moment.Arrival, 12)] += moment.Length.ToDouble();
        var total = shares.Sum();
        if (total <= 0) return null;
        var kept = Enumerable.Range(0, 12).Where(p => shares[p] >= Passing * total).ToHashSet();
        if (kept.Count > MostNotes) return null;
        var key = takes.Stretch.Bars[first - 1].Bar.Key ?? takes.Reading.Keys.ElementAtOrDefault(takes.Use.FirstBar + first - 1);
        // Six notes of the stated key's seven are the key's scale.
        if (takes.Stretch.Bars[first - 1].Bar.Key is { } stated && kept.Count == 6 && kept.All(p => stated.Notes.Any(n => n.PitchClass == p))) kept.UnionWith(stated.Notes.Select(n => n.PitchClass));
        var names = kept.ToDictionary(p => p, p => NoteName.TryParse(PlaceWords.Note(p, key), out var name) ? name : default);
        NoteName[] notes = [.. moments.Select(m => NoteName.Wrap(m.Arrival, 12)).Where(kept.Contains).Concat(kept).Select(p => names[p])];
        NoteName? root = key is { } k && kept.Contains(k.Tonic.PitchClass) ? k.Tonic : null;
        foreach (var reading in ScaleFinder.Find(notes, root, 12).Concat(ScaleFinder.Find(notes, null, 12)))
        {
            if (reading.Outside.Length > 0 || !ScaleTable.TryFind(reading.Name, out var scale) || scale.Rarity > Rare) continue;
            return new ScaleRule(reading.Root, Usual(scale), StretchBars.Of(first, last));
        }
        return null;
    }
}
