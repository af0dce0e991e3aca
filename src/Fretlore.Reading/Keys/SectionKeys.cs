using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Reading.Keys;

/// <summary>Finds sections whose own tonic is another one of the same seven notes: a chorus in G after verses in E minor.</summary>
internal static class SectionKeys
{
    // Fewer bars say too little.
    private const int FewestBars = 4;

    // How much better than the key around it another must fit (see KeyReading.Fit).
    private const double Margin = 0.25;

    /// <summary>The keys of a stretch that has one set of seven notes, in order.</summary>
    /// <param name="song">For its sections.</param>
    /// <param name="first">The stretch's first bar.</param>
    /// <param name="end">The bar after its last.</param>
    /// <param name="key">The key of all of it.</param>
    /// <param name="weigh">Weighs the notes from a bar up to another.</param>
    internal static IEnumerable<(int First, int End, Key Key)> Of(Song song, int first, int end, Key key, Func<int, int, BarWeights> weigh)
    {
        var starts = song.Sections.Select(s => s.FirstBar).Where(bar => bar > first && bar < end).Prepend(first).Distinct().Order().ToArray();
        for (var i = 0; i < starts.Length; i++)
        {
            var (from, until) = (starts[i], i + 1 < starts.Length ? starts[i + 1] : end);
            yield return (from, until, starts.Length == 1 || until - from < FewestBars ? key : Own(weigh(from, until), key));
        }
    }

    private static Key Own(BarWeights weights, Key around)
    {
        var found = weights.Find();
        var best = found[0];
        if (best.Key.Signature != around.Signature || best.Key.Tonic == around.Tonic) return around;
        // It must both fit better and come to rest there.
        if (weights.Last != best.Key.Tonic.PitchClass && weights.First != best.Key.Tonic.PitchClass) return around;
        foreach (var reading in found)
        {
            if (reading.Key.Tonic == around.Tonic && reading.Key.IsMinor == around.IsMinor) return best.Fit >= reading.Fit + Margin ? best.Key : around;
        }
        return around;
    }
}
