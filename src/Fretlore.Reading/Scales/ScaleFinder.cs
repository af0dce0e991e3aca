using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Scales;
using Fretlore.Reading.Chords;

namespace Fretlore.Reading.Scales;

/// <summary>Finds the scales that a set of notes may come from.</summary>
public static class ScaleFinder
{
    /// <summary>How many candidates are returned unless asked otherwise.</summary>
    public const int UsualCount = 6;

    /// <summary>Scales for notes written by name.</summary>
    /// <param name="notes">In the order played; repeated notes weigh more.</param>
    /// <param name="root">The root when it is known; it need not be among the notes.</param>
    /// <param name="count">How many candidates at most.</param>
    public static ImmutableArray<ScaleReading> Find(ReadOnlySpan<NoteName> notes, NoteName? root = null, int count = UsualCount)
    {
        var weights = new NoteWeights();
        var spelling = new Dictionary<int, NoteName>();
        foreach (var note in notes)
        {
            weights.Add(note.PitchClass, 1);
            spelling[note.PitchClass] = note;
        }
        if (notes.Length > 0)
        {
            weights.AddRootEvidence(notes[0].PitchClass, ScalePricing.FirstNote);
            weights.AddRootEvidence(notes[^1].PitchClass, ScalePricing.LastNote);
        }
        return Find(weights, root, pitchClass => spelling.TryGetValue(pitchClass, out var name) ? name : null, count);
    }

    /// <summary>Scales for weighted notes, each named from the root's spelling.</summary>
    /// <param name="weights">How much of each pitch class there is, and what speaks for which root.</param>
    /// <param name="root">The root when it is known.</param>
    /// <param name="spell">How a pitch class is written around here; null where nothing says so.</param>
    /// <param name="count">How many candidates at most.</param>
    internal static ImmutableArray<ScaleReading> Find(NoteWeights weights, NoteName? root, Func<int, NoteName?> spell, int count = UsualCount)
    {
        if (weights.Set.IsEmpty) return [];
        Span<(double Cost, int Root, int Scale)> best = stackalloc (double, int, int)[count];
        var found = 0;
        for (var pitchClass = 0; pitchClass < 12; pitchClass++)
        {
            if (root is { } given ? given.PitchClass != pitchClass : !weights.Set.Contains(pitchClass)) continue;
            for (var scale = 0; scale < ScaleTable.All.Length; scale++)
            {
                var cost = ScalePricing.Price(ScaleTable.All[scale], pitchClass, weights, root is not null);
                if (found == count && cost >= best[^1].Cost) continue;
                var place = found < count ? found++ : count - 1;
                while (place > 0 && best[place - 1].Cost > cost)
                {
                    best[place] = best[place - 1];
                    place--;
                }
                best[place] = (cost, pitchClass, scale);
            }
        }
        var readings = ImmutableArray.CreateBuilder<ScaleReading>(found);
        foreach (var (cost, tonic, scale) in best[..found])
        {
            var name = root ?? spell(tonic) ?? RootSpelling.Of(tonic, null, null);
            readings.Add(ScaleWording.Read(ScaleTable.All[scale], name, weights, spell, cost));
        }
        return readings.ToImmutable();
    }
}
