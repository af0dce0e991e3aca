namespace Fretlore.Sound;

/// <summary>The rate all sound is made at.</summary>
public static class SampleRate
{
    /// <summary>Samples a second: what video and Opus use, so that nothing is resampled later.</summary>
    public const int Hertz = 48_000;

    /// <summary>The sample nearest to a time.</summary>
    internal static long At(double seconds) => (long)Math.Round(seconds * Hertz);
}
