using System.Collections.Immutable;

namespace Fretlore.Music.Keys;

/// <summary>How strongly each degree belongs to a major and a minor key, from listeners or from counted music.</summary>
/// <remarks>
/// Values as published: Krumhansl and Kessler 1982 (listeners' ratings); Temperley, The Cognition of Basic Musical Structures, 2001; Temperley's
/// counts of the Kostka-Payne corpus (minor[1] is printed .084 in one copy and .048 in another; .084 here); Aarden 2003 (Essen folk songs);
/// Bellman 2005 after Budge 1943.
/// </remarks>
public sealed class KeyProfile
{
    private readonly double[] major;
    private readonly double[] minor;

    private KeyProfile(string name, double[] major, double[] minor)
    {
        Name = name;
        this.major = major;
        this.minor = minor;
    }

    public string Name { get; }

    public static KeyProfile KrumhanslKessler { get; } = new("Krumhansl-Kessler",
        [6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88],
        [6.33, 2.68, 3.52, 5.38, 2.6, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17]);

    public static KeyProfile Temperley { get; } = new("Temperley",
        [5, 2, 3.5, 2, 4.5, 4, 2, 4.5, 2, 3.5, 1.5, 4],
        [5, 2, 3.5, 4.5, 2, 4, 2, 4.5, 3.5, 2, 1.5, 4]);

    public static KeyProfile KostkaPayne { get; } = new("Kostka-Payne",
        [0.748, 0.06, 0.488, 0.082, 0.67, 0.46, 0.096, 0.715, 0.104, 0.366, 0.057, 0.4],
        [0.712, 0.084, 0.474, 0.618, 0.049, 0.46, 0.105, 0.747, 0.404, 0.067, 0.133, 0.33]);

    public static KeyProfile AardenEssen { get; } = new("Aarden-Essen",
        [17.7661, 0.145624, 14.9265, 0.160186, 19.8049, 11.3587, 0.291248, 22.062, 0.145624, 8.15494, 0.232998, 4.95122],
        [18.2648, 0.737619, 14.0499, 16.8599, 0.702494, 14.4362, 0.702494, 18.6161, 4.56621, 1.93186, 7.37619, 1.75623]);

    public static KeyProfile BellmanBudge { get; } = new("Bellman-Budge",
        [16.8, 0.86, 12.95, 1.41, 13.49, 11.93, 1.25, 20.28, 1.8, 8.04, 0.62, 10.57],
        [18.16, 0.69, 12.99, 13.34, 1.07, 11.15, 1.38, 21.07, 7.49, 1.53, 0.92, 10.21]);

    public static ImmutableArray<KeyProfile> All { get; } = [KrumhanslKessler, Temperley, KostkaPayne, AardenEssen, BellmanBudge];

    /// <summary>The part of a key's music that a degree has, if the profile is taken for a count of notes; all twelve add up to 1.</summary>
    /// <param name="semitones">0 to 11 above the tonic.</param>
    /// <param name="isMinor">Which of the two profiles.</param>
    public double Share(int semitones, bool isMinor)
    {
        var profile = isMinor ? minor : major;
        return profile[semitones] / profile.Sum();
    }

    /// <summary>How well weighted pitch classes fit a key: Pearson's correlation, -1 to 1.</summary>
    /// <param name="weights">Twelve weights, C first.</param>
    /// <param name="tonic">Pitch class of the tonic.</param>
    /// <param name="isMinor">Which of the two profiles.</param>
    public double Correlate(ReadOnlySpan<double> weights, int tonic, bool isMinor)
    {
        var profile = isMinor ? minor : major;
        double meanWeight = 0, meanProfile = 0;
        for (var i = 0; i < 12; i++)
        {
            meanWeight += weights[i] / 12;
            meanProfile += profile[i] / 12;
        }
        double product = 0, squareWeight = 0, squareProfile = 0;
        for (var i = 0; i < 12; i++)
        {
            var weight = weights[(tonic + i) % 12] - meanWeight;
            var value = profile[i] - meanProfile;
            product += weight * value;
            squareWeight += weight * weight;
            squareProfile += value * value;
        }
        return squareWeight <= 0 ? 0 : product / Math.Sqrt(squareWeight * squareProfile);
    }
}
