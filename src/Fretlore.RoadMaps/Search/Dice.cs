namespace Fretlore.RoadMaps.Search;

/// <summary>A row of numbers that looks like chance and is the same for the same seed on every machine.</summary>
/// <remarks>SplitMix64: Steele, Lea and Flood, "Fast Splittable Pseudorandom Number Generators" (2014).</remarks>
internal sealed class Dice(ulong seed)
{
    private ulong state = seed;

    public static Dice Of(int seed, int take, int attempt) => new(unchecked(Mixed(Mixed(Mixed((uint)seed + 1UL) + (uint)take + 1UL) + (uint)attempt + 1UL)));

    public ulong Next()
    {
        state = unchecked(state + 0x9E3779B97F4A7C15UL);
        return Mixed(state);
    }

    /// <summary>From 0 up to 1, without 1.</summary>
    public double Share() => (Next() >> 11) * (1.0 / (1UL << 53));

    public bool Comes(double chance) => Share() < chance;

    /// <summary>From 0 up to <paramref name="count"/>, without it.</summary>
    public int Below(int count) => (int)(Share() * count);

    /// <summary>An index by weight; -1 when all weights are 0.</summary>
    public int ByWeight(ReadOnlySpan<double> weights)
    {
        var total = 0.0;
        foreach (var weight in weights) total += weight;
        if (total <= 0) return -1;
        var left = Share() * total;
        var last = -1;
        for (var i = 0; i < weights.Length; i++)
        {
            if (weights[i] <= 0) continue;
            last = i;
            left -= weights[i];
            if (left < 0) return i;
        }
        return last;
    }

    private static ulong Mixed(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
