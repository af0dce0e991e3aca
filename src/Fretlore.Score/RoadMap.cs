using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>A solo written as rules for its free stretches.</summary>
public sealed record RoadMap
{
    public required string Name { get; init; }

    /// <summary>The scale as written: tonic and name.</summary>
    public (NoteName Tonic, string Name)? Scale { get; init; }

    public (StringNumber Highest, StringNumber Lowest)? Strings { get; init; }

    public Fret? FromFret { get; init; }

    public Fret? ToFret { get; init; }

    /// <summary>The slowest and the fastest usual value.</summary>
    public (ValueBase Slowest, ValueBase Fastest)? Density { get; init; }

    public ValueList<Aim> Aims { get; init; }

    /// <summary>Riffs that may be drawn on.</summary>
    public ValueList<string> MayUse { get; init; }

    public ValueList<NoteName> Avoid { get; init; }
}

/// <summary>A note to land on.</summary>
/// <param name="Target">The note.</param>
/// <param name="Bar">Bar of the stretch, from 1; null for anywhere.</param>
/// <param name="How">How it is reached, in the sheet's words; null for any way.</param>
public sealed record Aim(NoteName Target, int? Bar, string? How);

/// <summary>Where a road map stands in the song.</summary>
public sealed record RoadMapUse(string RoadMap, int Part, int FirstBar, int BarCount);
