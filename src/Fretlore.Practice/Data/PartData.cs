namespace Fretlore.Practice.Data;

/// <summary>A part: its neck, and what it plays.</summary>
internal sealed record PartData
{
    public required string Name { get; init; }

    public required string Title { get; init; }

    /// <summary>From the low string to the high one, without capo.</summary>
    public required IReadOnlyList<StringData> Strings { get; init; }

    /// <summary>The fret of the capo at the start; 0 for none.</summary>
    public required int Capo { get; init; }

    /// <summary>The numbers of the lowest and the highest string it covers; null where it covers all, and frets count from it.</summary>
    public IReadOnlyList<int>? CapoStrings { get; init; }

    /// <summary>Where the capo moves, in order of time; null where it never does.</summary>
    public IReadOnlyList<CapoData>? Capos { get; init; }

    /// <summary>Frets on the neck, counted from the nut.</summary>
    public required int Frets { get; init; }

    /// <summary>From -1 on the left to 1 on the right.</summary>
    public required double Aside { get; init; }

    /// <summary>The notes as they are heard, in order of time.</summary>
    public required IReadOnlyList<NoteData> Notes { get; init; }

    /// <summary>The chord from a time on.</summary>
    public required IReadOnlyList<MomentData> Chords { get; init; }

    /// <summary>The scale from a time on.</summary>
    public required IReadOnlyList<MomentData> Scales { get; init; }
}

/// <summary>An open string without capo.</summary>
/// <param name="Name">Such as <c>F#2</c>.</param>
/// <param name="Midi">Its MIDI number.</param>
internal sealed record StringData(string Name, int Midi);

/// <summary>From a time on, the capo: its fret, 0 for none, and the lowest and highest string it covers where these are not all.</summary>
internal sealed record CapoData(double At, int Fret, IReadOnlyList<int>? Strings);

/// <summary>From a time on, the chord or scale of an index; -1 for none.</summary>
internal sealed record MomentData(double At, int Index);

/// <summary>A note as it is heard.</summary>
internal sealed record NoteData
{
    /// <summary>The written note: the number in the ids of the pages.</summary>
    public required int Id { get; init; }

    /// <summary>The written notes tied to it; null for none.</summary>
    public IReadOnlyList<int>? Held { get; init; }

    public required double On { get; init; }

    public required double Off { get; init; }

    /// <summary>1 is the highest.</summary>
    public required int String { get; init; }

    /// <summary>As printed: counted from a capo over all strings, or else from the nut.</summary>
    public required int Fret { get; init; }

    /// <summary>As spelled, such as <c>Bb3</c>.</summary>
    public required string Pitch { get; init; }

    public required int Midi { get; init; }

    /// <summary>1 to 4, T for the thumb; null where no finger holds it or none is known.</summary>
    public string? Finger { get; init; }

    /// <summary>Index into the song's roles.</summary>
    public required int Role { get; init; }

    /// <summary>How it is played when it is not just picked, such as <c>bend</c>; null otherwise.</summary>
    public string? How { get; init; }
}

/// <summary>What a note does.</summary>
/// <param name="Degree">Such as <c>b7</c>; empty for a dead note.</param>
/// <param name="Words">Such as <c>flat seventh</c>.</param>
/// <param name="Kind"><c>chord</c>, <c>tension</c>, <c>leading</c>, <c>key</c>, <c>outside</c> or <c>dead</c>.</param>
internal sealed record RoleData(string Degree, string Words, string Kind);
