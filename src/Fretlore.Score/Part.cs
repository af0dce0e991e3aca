using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>One player's line through the song.</summary>
public sealed record Part
{
    /// <summary>The short name used in the sheet.</summary>
    public required string Name { get; init; }

    /// <summary>The name printed on pages.</summary>
    public required string Title { get; init; }

    public required Neck Neck { get; init; }

    /// <summary>The strings that are on, string 1 first, as many as the neck has; empty where nothing is said of them.</summary>
    public ValueList<GuitarString> Strings { get; init; }

    /// <summary>The rig asked for, by what it does (clean, driven, ...), or null.</summary>
    public string? Sound { get; init; }

    /// <summary>One for each of the song's written bars.</summary>
    public required ValueList<PartBar> Bars { get; init; }
}
