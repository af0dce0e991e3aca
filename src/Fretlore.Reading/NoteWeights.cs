using Fretlore.Music;

namespace Fretlore.Reading;

/// <summary>How much of each pitch class a stretch of music has, and what in it speaks for which root.</summary>
public sealed class NoteWeights
{
    private readonly double[] weights = new double[12];
    private readonly double[] rootEvidence = new double[12];

    /// <summary>The pitch classes that sound at all.</summary>
    public PitchClassSet Set { get; private set; }

    public double Total { get; private set; }

    /// <summary>The pitch class that was added first; candidates of equal worth are taken from it up, so that the choice moves along when all is transposed.</summary>
    internal int Origin { get; private set; }

    public double this[int pitchClass] => weights[pitchClass];

    /// <param name="pitchClass">0 to 11.</param>
    /// <param name="weight">Usually the length in quarter notes; above 0.</param>
    public void Add(int pitchClass, double weight)
    {
        if (Set.IsEmpty) Origin = pitchClass;
        weights[pitchClass] += weight;
        Total += weight;
        Set = Set.With(pitchClass);
    }

    public ReadOnlySpan<double> AsSpan() => weights;

    /// <summary>Notes that are at home here though they may not sound in this stretch, such as the key's; empty when nothing is known.</summary>
    public PitchClassSet AtHome { get; set; }

    /// <summary>Says that something speaks for a root: the first note, the last, the lowest, the key.</summary>
    public void AddRootEvidence(int pitchClass, double amount) => rootEvidence[pitchClass] += amount;

    internal double RootEvidence(int pitchClass) => rootEvidence[pitchClass];

    /// <summary>The part of all weight that a pitch class has, 0 to 1.</summary>
    public double Share(int pitchClass) => Total > 0 ? weights[pitchClass] / Total : 0;
}
