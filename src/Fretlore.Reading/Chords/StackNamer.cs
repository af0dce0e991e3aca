using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Chords;

namespace Fretlore.Reading.Chords;

/// <summary>Names for how notes are stacked, where no root explains them: fourths, clusters, one triad on another.</summary>
internal static class StackNamer
{
    private const double Stacked = 3.0;
    private const int LeastForPolychord = 5;
    private const int MostFourths = 7; // More of them fill all steps between.
    private const int WidestCluster = 7; // Semitones, unless there are so many notes that they lie close anyway.

    /// <summary>The stacking of a set over its bass; null when it is none of the three.</summary>
    internal static ChordReading? Name(PitchClassSet all, int bass, Key? key) =>
        all.Count < 3 ? null : Polychord(all, bass, key) ?? Fourths(all, bass, key) ?? Cluster(all, bass, key);

    // D|C: the lower triad stands on the bass, the upper one holds all that is left.
    private static ChordReading? Polychord(PitchClassSet all, int bass, Key? key)
    {
        if (all.Count < LeastForPolychord) return null;
        foreach (var lower in (ReadOnlySpan<ChordFamily>)[ChordFamilies.Major, ChordFamilies.Minor])
        {
            var below = lower.Tones.Up(bass);
            if (!below.IsWithin(all)) continue;
            // From the bass up, so that the choice moves along when everything is transposed.
            for (var above = 1; above < 12; above++)
            {
                var root = (bass + above) % 12;
                foreach (var upper in (ReadOnlySpan<ChordFamily>)[ChordFamilies.Major, ChordFamilies.Minor])
                {
                    if ((below | upper.Tones.Up(root)) != all) continue;
                    var (low, high) = (RootSpelling.Of(bass, lower, key), RootSpelling.Of(root, upper, key));
                    var notes = lower.Degrees.Items.Select(low.Transpose).Concat(upper.Degrees.Items.Select(high.Transpose)).DistinctBy(n => n.PitchClass);
                    return Read(
                        $"{high}{upper.Letters}|{low}{lower.Letters}", "polychord", low, low, [.. notes],
                        $"No one root explains these notes: they are the triad {high}{upper.Letters} on top of the triad {low}{lower.Letters}.");
                }
            }
        }
        return null;
    }

    private static ChordReading? Fourths(PitchClassSet all, int bass, Key? key)
    {
        if (all.Count > MostFourths) return null;
        for (var above = 0; above < 12; above++)
        {
            var bottom = (bass + above) % 12;
            if (!all.Contains(bottom)) continue;
            var chain = default(PitchClassSet);
            for (var i = 0; i < all.Count; i++) chain = chain.With((bottom + 5 * i) % 12);
            if (chain != all) continue;
            var names = Names(Enumerable.Range(0, all.Count).Select(i => (bottom + 5 * i) % 12), key);
            return Read(names[0] + "(4ths)", "(4ths)", names[0], RootSpelling.Of(bass, null, key), names,
                $"No one root explains these notes: from {names[0]} up they are stacked in fourths.");
        }
        return null;
    }

    private static ChordReading? Cluster(PitchClassSet all, int bass, Key? key)
    {
        for (var above = 0; above < 12; above++)
        {
            var bottom = (bass + above) % 12;
            if (!all.Contains(bottom)) continue;
            var steps = all.From(bottom);
            var last = 0;
            var halves = 0;
            var isCluster = true;
            foreach (var tone in steps)
            {
                if (tone == 0) continue;
                isCluster &= tone - last <= 2;
                halves += tone - last == 1 ? 1 : 0;
                last = tone;
            }
            if (!isCluster || halves == 0 || (last > WidestCluster && all.Count <= MostFourths)) continue;
            var order = new List<int>();
            foreach (var tone in steps) order.Add((bottom + tone) % 12);
            var names = Names(order, key);
            return Read(names[0] + "(cluster)", "(cluster)", names[0], RootSpelling.Of(bass, null, key), names,
                $"No one root explains these notes: from {names[0]} up they lie in steps beside each other, a cluster.");
        }
        return null;
    }

    private static ImmutableArray<NoteName> Names(IEnumerable<int> pitchClasses, Key? key) => [.. pitchClasses.Select(p => RootSpelling.Of(p, null, key))];

    private static ChordReading Read(string symbol, string kind, NoteName root, NoteName bass, ImmutableArray<NoteName> notes, string reason) =>
        new(symbol, root, kind, bass, notes, reason, Stacked) { Parts = [new CostPart(CostReason.StackedVoicing, Stacked)] };

    /// <summary>True for a best name that says less than how the notes are stacked.</summary>
    internal static bool IsDearer(double cost) => cost > Stacked;
}
