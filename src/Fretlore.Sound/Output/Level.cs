namespace Fretlore.Sound.Output;

/// <summary>How much a mix is turned up so that it comes out at one loudness, with its peaks held.</summary>
/// <param name="Steps">Steps of <see cref="StepDecibels"/> before the limiter.</param>
/// <param name="Ceiling">The limiter's, as a share of full scale.</param>
internal readonly record struct Level(int Steps, double Ceiling)
{
    /// <summary>Steps are so wide that the nearest is close enough, and so seldom another one when one bar of a song changes.</summary>
    public const double StepDecibels = 0.2;

    /// <summary>As near as the loudness comes to what it should be, in LU.</summary>
    public const double CloseEnough = StepDecibels / 2;

    private const double MostGain = 60; // dB

    /// <summary>A factor before the limiter.</summary>
    public double Gain => FromDecibels(Steps * StepDecibels);

    /// <summary>The level before any is tried: what would do without a limiter.</summary>
    /// <param name="raw">The loudness as it is, in LUFS.</param>
    /// <param name="format">The kind of file it goes into: a codec that draws the wave anew needs room for that.</param>
    public static Level First(double raw, SoundFormat format) => new Level(0, CeilingOf(format)).TurnedUp(SoundFile.Loudness - raw);

    /// <summary>The level of another mix, for what is to be as loud as it was there.</summary>
    /// <param name="steps">The other's.</param>
    /// <param name="format">The kind of file it goes into.</param>
    public static Level Like(int steps, SoundFormat format) => new(steps, CeilingOf(format));

    /// <summary>The nearest level so much louder, within bounds.</summary>
    public Level TurnedUp(double decibels) => this with { Steps = (int)Math.Min(Steps + Math.Round(decibels / StepDecibels), MostGain / StepDecibels) };

    private static double CeilingOf(SoundFormat format) => FromDecibels(SoundFile.TruePeak - (format == SoundFormat.Opus ? 1.5 : 0.2));

    private static double FromDecibels(double decibels) => Math.Pow(10, decibels / 20);
}
