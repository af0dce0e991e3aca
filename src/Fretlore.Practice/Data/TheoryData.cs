namespace Fretlore.Practice.Data;

/// <summary>A chord with its reason.</summary>
internal sealed record ChordData(string Symbol, string Reason, IReadOnlyList<string> Notes);

/// <summary>A scale with its reason.</summary>
/// <param name="Name">With its root, such as <c>A Dorian</c>.</param>
/// <param name="Tones">Pitch class (0 is C) and degree of each tone, from the root up.</param>
/// <param name="Reason">In words.</param>
internal sealed record ScaleData(string Name, IReadOnlyList<ToneData> Tones, string Reason);

/// <summary>A tone of a scale.</summary>
internal sealed record ToneData(int PitchClass, string Degree, string Name);

/// <summary>A named shape as a chord frame.</summary>
/// <param name="Name">As in the sheet.</param>
/// <param name="Symbol">The chord it is on its neck; null when it has no name.</param>
/// <param name="Reason">Why it has that name.</param>
/// <param name="Frets">From the low string to the high one; null where the string is not sounded.</param>
internal sealed record ShapeData(string Name, string? Symbol, string? Reason, IReadOnlyList<int?> Frets);

/// <summary>A stretch of a part that is played by a road map.</summary>
/// <param name="Name">The road map's name.</param>
/// <param name="Part">The part that plays it.</param>
/// <param name="Rules">All its rules, a sentence each.</param>
/// <param name="Bars">What holds in each of its bars.</param>
internal sealed record RoadMapData(string Name, int Part, IReadOnlyList<string> Rules, IReadOnlyList<FreeBarData> Bars);

/// <summary>What holds in one bar of a free stretch.</summary>
internal sealed record FreeBarData
{
    /// <summary>The riff that is played as written here; null in a free bar.</summary>
    public string? Fixed { get; init; }

    /// <summary>The scale, when it is one we know.</summary>
    public ScaleData? Scale { get; init; }

    /// <summary>The strings to stay on, the highest and the lowest; null for all.</summary>
    public int? HighestString { get; init; }

    public int? LowestString { get; init; }

    /// <summary>The frets to stay between; null for all.</summary>
    public int? LowestFret { get; init; }

    public int? HighestFret { get; init; }

    /// <summary>The notes to land on here, or somewhere in the stretch.</summary>
    public required IReadOnlyList<AimData> Aims { get; init; }

    /// <summary>The other rules that hold here, a sentence each.</summary>
    public required IReadOnlyList<string> Rules { get; init; }
}

/// <summary>A note to land on.</summary>
/// <param name="Note">Its name.</param>
/// <param name="PitchClass">0 is C.</param>
/// <param name="Words">The rule as a sentence.</param>
internal sealed record AimData(string Note, int PitchClass, string Words);

/// <summary>A step of the lesson.</summary>
internal sealed record StepData
{
    public required string Title { get; init; }

    /// <summary>Riffs, sections or road maps by name.</summary>
    public required IReadOnlyList<string> Teaches { get; init; }

    /// <summary>Percent of the song's tempo, the slowest first; may be empty.</summary>
    public required IReadOnlyList<int> Speeds { get; init; }

    public string? Say { get; init; }

    public required IReadOnlyList<CallOutData> CallOuts { get; init; }

    /// <summary>Its licks elsewhere on the neck and in other keys.</summary>
    public required IReadOnlyList<VersionData> Versions { get; init; }

    /// <summary>Names of the shapes it uses.</summary>
    public required IReadOnlyList<string> Shapes { get; init; }

    /// <summary>Indexes of the chords it uses.</summary>
    public required IReadOnlyList<int> Chords { get; init; }

    /// <summary>Indexes of its scales.</summary>
    public required IReadOnlyList<int> Scales { get; init; }

    /// <summary>In one word; null when no hand plan covers it.</summary>
    public string? Difficulty { get; init; }

    /// <summary>What makes it hard, in words.</summary>
    public required IReadOnlyList<string> Hard { get; init; }

    /// <summary>Minutes to spend on it in one sitting.</summary>
    public required int Minutes { get; init; }
}

/// <summary>A lick in another place or key, as plain-text tab.</summary>
internal sealed record VersionData(string Name, string Title, string Hand, string? Fingers, string Tab);

/// <summary>What a teacher says about a riff.</summary>
internal sealed record CallOutData(string Name, IReadOnlyList<string> Headline, IReadOnlyList<string> WalkThrough, IReadOnlyList<string> NoteByNote);
