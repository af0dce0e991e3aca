using Fretlore.Music;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Finds out whether eighths or 16ths are swung: pairs of a long and a short one, and no triplets.</summary>
/// <param name="Swung">The value that is swung; null for straight.</param>
/// <param name="Pairs">How many pairs are long and short.</param>
/// <param name="All">How many pairs there are.</param>
internal sealed record SwingFinder(ValueBase? Swung, int Pairs, int All)
{
    // The long one is usually one and a half to three times the short one (common practice); a pair that is even is not.
    private const double Shortest = 0.6;
    private const double Longest = 0.74;
    private const int FewestPairs = 8;

    public static SwingFinder Of(MidiBars bars, IEnumerable<long> starts)
    {
        var places = starts.Distinct().Select(t => bars.Place(t)).ToList();
        foreach (var value in (ReadOnlySpan<ValueBase>)[ValueBase.Eighth, ValueBase.Sixteenth])
        {
            var pair = 8.0 / (int)value;
            var (swung, even, thirds) = (0, 0, 0);
            foreach (var pairs in places.GroupBy(p => (p.Bar, Pair: Math.Floor(p.At / pair + 0.02))))
            {
                var within = pairs.Select(p => p.At / pair - pairs.Key.Pair).ToList();
                if (within.Exists(w => w is > 0.28 and < 0.4)) thirds++;
                else if (within.Exists(w => w is >= Shortest and <= Longest) && !within.Exists(w => w is > 0.4 and < Shortest)) swung++;
                else if (within.Exists(w => w is > 0.44 and < 0.56)) even++;
            }
            if (swung >= FewestPairs && swung > 3 * (even + thirds)) return new SwingFinder(value, swung, swung + even + thirds);
        }
        return new SwingFinder(null, 0, 0);
    }
}
