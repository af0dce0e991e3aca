using Fretlore.Sound.Loudness;

namespace Fretlore.Sound.Output;

/// <summary>How much a mix is turned up so that it comes out at one loudness, with its peaks held.</summary>
/// <param name="Gain">A factor before the limiter.</param>
/// <param name="Ceiling">The limiter's, as a share of full scale.</param>
/// <param name="Loudness">What it comes out at, in LUFS; null for silence.</param>
internal readonly record struct Level(double Gain, double Ceiling, double? Loudness)
{
    private const double MostGain = 60; // dB
    private const double CloseEnough = 0.1; // LU

    /// <summary>Finds the gain by trying: the limiter takes a little loudness away.</summary>
    /// <param name="mix">The mix.</param>
    /// <param name="raw">Its loudness as it is, in LUFS; null for silence.</param>
    /// <param name="format">The kind of file it goes into: a codec that draws the wave anew needs room for that.</param>
    public static Level Find(StoredMix mix, double? raw, SoundFormat format)
    {
        var ceiling = CeilingOf(format);
        if (raw is not { } measured) return new Level(1, ceiling, null);
        var decibels = Math.Min(SoundFile.Loudness - measured, MostGain);
        for (var attempt = 0; ; attempt++)
        {
            var level = new Level(FromDecibels(decibels), ceiling, null);
            var reached = level.LoudnessOf(mix) ?? SoundFile.Loudness;
            if (Math.Abs(SoundFile.Loudness - reached) < CloseEnough || attempt == 5) return level with { Loudness = reached };
            decibels = Math.Min(decibels + SoundFile.Loudness - reached, MostGain);
        }
    }

    /// <summary>The level of another mix, for what is to be as loud as it was there.</summary>
    /// <param name="gain">The other's gain.</param>
    /// <param name="format">The kind of file it goes into.</param>
    public static Level Like(double gain, SoundFormat format) => new(gain, CeilingOf(format), null);

    private static double CeilingOf(SoundFormat format) => FromDecibels(SoundFile.TruePeak - (format == SoundFormat.Opus ? 1.5 : 0.2));

    private double? LoudnessOf(StoredMix mix)
    {
        var (limiter, meter, gain) = (new PeakLimiter(Ceiling), new LoudnessMeter(), Gain);
        long taken = 0;
        mix.Play((left, right, highest) =>
        {
            var (l, r) = limiter.Next(left * gain, right * gain, highest * gain);
            if (taken++ >= PeakLimiter.Delay) meter.Hear(l, r);
        });
        return meter.Integrated();
    }

    private static double FromDecibels(double decibels) => Math.Pow(10, decibels / 20);
}
