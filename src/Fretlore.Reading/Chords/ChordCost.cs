using Fretlore.Music;

namespace Fretlore.Reading.Chords;

/// <summary>Why a chord name is less good than a plain triad with its root in the bass.</summary>
public enum CostReason
{
    /// <summary>The family is not an everyday one.</summary>
    RareFamily,

    /// <summary>The lowest note is another tone of the chord.</summary>
    BassIsNotRoot,

    /// <summary>The lowest note does not belong to the chord above it.</summary>
    BassIsForeign,

    /// <summary>Neither a third nor what stands in its place sounds.</summary>
    ThirdMissing,

    /// <summary>The fifth is left out.</summary>
    FifthMissing,

    /// <summary>The root does not sound.</summary>
    RootMissing,

    /// <summary>A tone beyond the family.</summary>
    Tension,

    /// <summary>The root is no note of the key.</summary>
    RootOutsideKey,

    /// <summary>A name for how the notes are stacked, not for what they do.</summary>
    StackedVoicing,
}

/// <summary>One named part of a chord name's cost.</summary>
/// <param name="Why">What is unusual.</param>
/// <param name="Amount">Above 0; a missing fifth of a seventh chord is about 0.2, an inversion about 1.</param>
/// <param name="Degree">The degree it is about, when it is about one.</param>
public readonly record struct CostPart(CostReason Why, double Amount, Interval? Degree = null);
