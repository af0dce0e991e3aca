namespace Fretlore.Sound.Strings;

/// <summary>Even noise that is the same for the same seed on every machine (xorshift64*, Vigna 2016).</summary>
internal struct Noise
{
    private ulong state;

    /// <param name="note">The note's number.</param>
    /// <param name="bar">The played bar it is in, where each time it is played is to differ.</param>
    /// <param name="take">The recording.</param>
    public Noise(int note, int bar, int take)
    {
        unchecked
        {
            // Steele, Lea and Flood's mixing step (2014), so that neighbouring notes have nothing in common.
            var mixed = ((ulong)(uint)note << 32 ^ (ulong)(uint)bar << 8 ^ (byte)take) + 0x9E3779B97F4A7C15;
            mixed = (mixed ^ mixed >> 30) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ mixed >> 27) * 0x94D049BB133111EB;
            state = (mixed ^ mixed >> 31) | 1;
        }
    }

    /// <summary>The next value, from -1 to 1.</summary>
    public double Next()
    {
        unchecked
        {
            state ^= state >> 12;
            state ^= state << 25;
            state ^= state >> 27;
            return (long)(state * 0x2545F4914F6CDD1D) / 9223372036854775808.0;
        }
    }
}
