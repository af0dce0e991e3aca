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

    private static bool IsSymmetrical(Scale scale)
    {
        for (var step = 1; step <= 6; step++)
        {
            if (scale.Tones.Up(step) == scale.Tones) return true;
        }
        return false;
    }

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

    /// <summary>A scale on a tonic, as it is: nothing missing and nothing outside.</summary>
    public static ScaleReading Whole(Scale scale, NoteName tonic) => ScaleWording.Whole(scale, tonic);

    /// <summary>Scales for weighted notes, each named from the root's spelling.</summary>
    /// <param name="weights">How much of each pitch class there is, and what speaks for which root.</param>
    /// <param name="root">The root when it is known.</param>
    /// <param name="spell">How a pitch class is written around here; null where nothing says so.</param>
    /// <param name="count">How many candidates at most.</param>
    internal static ImmutableArray<ScaleReading> Find(NoteWeights weights, NoteName? root, Func<int, NoteName?> spell, int count = UsualCount)
    {
        if (weights.Set.IsEmpty) return [];
        var best = new (double Cost, int Root, Scale? Scale, ScaleUnion Union)[count];
        var found = 0;
        for (var above = 0; above < 12; above++)
        {
            var pitchClass = (weights.Origin + above) % 12;
            if (root is { } given ? given.PitchClass != pitchClass : !weights.Set.Contains(pitchClass)) continue;
            foreach (var scale in ScaleTable.All) Keep(ScalePricing.Price(scale, pitchClass, weights, root is not null), pitchClass, scale, default);
            if (ScaleUnion.TryBest(weights, pitchClass, root is not null, out var union)) Keep(union.Cost, pitchClass, null, union);
        }
        var readings = ImmutableArray.CreateBuilder<ScaleReading>(found);
        foreach (var (cost, tonic, scale, union) in best.AsSpan(0, found))
        {
            var name = root ?? spell(tonic) ?? RootSpelling.Of(tonic, null, null);
            readings.Add(ScaleWording.Read(scale ?? union.ToScale(), name, weights, spell, cost));
        }
        return readings.ToImmutable();

        void Keep(double cost, int pitchClass, Scale? scale, ScaleUnion union)
        {
            if (found == count && cost >= best[^1].Cost) return;
            // The same notes under the same name on another root, as of a whole-tone scale, are told once.
            if (scale is not null && IsSymmetrical(scale))
            {
                var twin = Array.FindIndex(best, 0, found, kept => ReferenceEquals(kept.Scale, scale) && scale.Tones.Up(kept.Root) == scale.Tones.Up(pitchClass));
                if (twin >= 0 && best[twin].Cost <= cost) return;
                if (twin >= 0) Array.Copy(best, twin + 1, best, twin, --found - twin);
            }
            var place = found < count ? found++ : count - 1;
            while (place > 0 && best[place - 1].Cost > cost)
            {
                best[place] = best[place - 1];
                place--;
            }
            best[place] = (cost, pitchClass, scale, union);
        }
    }
}
