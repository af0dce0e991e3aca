using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Score;

namespace Fretlore.Hands.Shapes;

/// <summary>One way to play a chord.</summary>
/// <param name="Shape">The frets.</param>
/// <param name="LowToHigh">The finger on each string, low string first; null where it is open or not sounded.</param>
/// <param name="Position">The fret the index finger stands at.</param>
/// <param name="Missing">Degrees of the chord that don't sound.</param>
/// <param name="Lowest">The lowest note.</param>
/// <param name="Effort">What holding it costs the hand, and coming to it when a position was given; in points, see the cost table.</param>
/// <param name="Lack">What it lacks as a chord: tones, the right bass, strings, evenness; in the same points.</param>
public sealed record ShapeChoice(
    Shape Shape, ImmutableArray<Finger?> LowToHigh, int Position, ImmutableArray<Interval> Missing, NoteName Lowest, double Effort, double Lack)
{
    /// <summary>What the ranking goes by; lower is better.</summary>
    public double Cost => Effort + Lack;

    /// <summary>In words: what is missing and what is in the bass.</summary>
    public string Words(ChordName name)
    {
        var missing = Missing.Select(degree => "no " + Degree.Words(degree)).ToList();
        if (Lowest != name.Bass) missing.Add($"{Lowest} in the bass");
        return missing.Count == 0 ? "complete" : string.Join(", ", missing);
    }
}
