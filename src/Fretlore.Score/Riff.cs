using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>A named stretch of one part, as defined in the sheet.</summary>
public sealed record Riff
{
    public required string Name { get; init; }

    /// <summary>The riff this one varies, or null.</summary>
    public string? VariationOf { get; init; }

    /// <summary>The neck it was written for.</summary>
    public required Neck Neck { get; init; }

    /// <summary>Its own bars with their repeats, numbered from 1.</summary>
    public required ValueList<Bar> Bars { get; init; }

    /// <summary>What is played, one for each of <see cref="Bars"/>.</summary>
    public required ValueList<PartBar> Content { get; init; }
}

/// <summary>Where a riff stands in the song.</summary>
/// <param name="Riff">The riff's name.</param>
/// <param name="Part">Index into <see cref="Song.Parts"/>.</param>
/// <param name="FirstBar">Index into <see cref="Song.Bars"/>.</param>
/// <param name="BarCount">Written bars it takes there.</param>
public sealed record RiffUse(string Riff, int Part, int FirstBar, int BarCount);

/// <summary>A shape with a name and the neck it was written for.</summary>
public sealed record NamedShape(string Name, Shape Shape, Neck Neck)
{
    /// <summary>The finger that holds each string, low to high, null where the sheet does not say; empty when it says none.</summary>
    public ValueList<Finger?> Fingers { get; init; }

    /// <summary>The stated finger of a string where the shape holds it at this fret, or null.</summary>
    public Finger? FingerOf(StringNumber number, Fret fret)
    {
        var index = Shape.LowToHigh.Count - number.Value;
        return index >= 0 && index < Fingers.Count && Shape.LowToHigh[index] == fret ? Fingers[index] : null;
    }
}

/// <summary>A named stretch of the form, such as a verse.</summary>
/// <param name="Name">As printed.</param>
/// <param name="FirstBar">Index into <see cref="Song.Bars"/>.</param>
/// <param name="BarCount">Written bars.</param>
public sealed record Section(string Name, int FirstBar, int BarCount);
