namespace Fretlore.Listening.Spectra;

/// <summary>Sorts the bins of a spectrum by pitch, a band a semitone.</summary>
internal sealed class PitchBands
{
    /// <summary>The lowest band, as a MIDI number: below it semitones are nearer to each other than bins.</summary>
    public const int Lowest = 55;

    /// <summary>The highest.</summary>
    public const int Highest = 105;

    public const int Count = Highest - Lowest + 1;

    private readonly (int Band, float Share)[] lower;

    /// <param name="spectrum">What bins it has.</param>
    /// <param name="cents">How far the take is tuned above A4 = 440.</param>
    public PitchBands(Spectrum spectrum, double cents)
    {
        lower = new (int, float)[spectrum.BinCount];
        for (var bin = 1; bin < lower.Length; bin++)
        {
            var pitch = 69 + 12 * Math.Log2(bin * spectrum.HertzPerBin / 440) - cents / 100 - Lowest;
            var band = (int)Math.Floor(pitch);
            lower[bin] = pitch is < 0 or >= Count - 1 ? (-1, 0) : (band, (float)(pitch - band));
        }
        lower[0] = (-1, 0);
    }

    /// <summary>The power in each band; a bin between two is shared by both.</summary>
    public void Sort(ReadOnlySpan<float> powers, Span<float> bands)
    {
        bands.Clear();
        for (var bin = 0; bin < lower.Length; bin++)
        {
            var (band, share) = lower[bin];
            if (band < 0) continue;
            bands[band] += (1 - share) * powers[bin];
            bands[band + 1] += share * powers[bin];
        }
    }
}
