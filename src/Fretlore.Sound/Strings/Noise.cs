namespace Fretlore.Sound.Strings;

/// <summary>Even noise that is the same for the same seed on every machine (xorshift64*, Vigna 2016).</summary>
internal struct Noise
{
    private ulong state;

    /// <param name="seed">Any number, well mixed.</param>
    public Noise(ulong seed) => state = seed | 1;

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
