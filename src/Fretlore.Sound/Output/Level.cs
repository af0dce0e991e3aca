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
        var ceiling = FromDecibels(SoundFile.TruePeak - (format == SoundFormat.Opus ? 1.5 : 0.2));
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
