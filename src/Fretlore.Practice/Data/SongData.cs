namespace Fretlore.Practice.Data;

/// <summary>Everything the page's code knows of a song. Times are seconds from the song's start as written, repeats unrolled.</summary>
internal sealed record SongData
{
    public const int CurrentFormat = 1;

    /// <summary>Raised when the page's code must read the data another way.</summary>
    public int Format { get; init; } = CurrentFormat;

    /// <summary>Tells songs apart in what the page remembers on a device.</summary>
    public required string Id { get; init; }

    public required string Title { get; init; }

    public string? Artist { get; init; }

    public string? Credits { get; init; }

    public string? Rights { get; init; }

    /// <summary>Such as <c>A Dorian</c>.</summary>
    public required string Key { get; init; }

    /// <summary>Fretlore's version.</summary>
    public required string MadeBy { get; init; }

    /// <summary>To the end of the last bar.</summary>
    public required double Seconds { get; init; }

    /// <summary>The bars in written order.</summary>
    public required IReadOnlyList<BarData> Bars { get; init; }

    /// <summary>The bars in the order played.</summary>
    public required IReadOnlyList<PlayedBarData> Played { get; init; }

    /// <summary>Sections, riffs and free stretches, each as often as it is played.</summary>
    public required IReadOnlyList<StretchData> Stretches { get; init; }

    public required IReadOnlyList<PartData> Parts { get; init; }

    /// <summary>What notes do, each once; notes refer to them by index.</summary>
    public required IReadOnlyList<RoleData> Roles { get; init; }

    public required IReadOnlyList<ChordData> Chords { get; init; }

    public required IReadOnlyList<ScaleData> Scales { get; init; }

    public required IReadOnlyList<ShapeData> Shapes { get; init; }

    public required IReadOnlyList<StepData> Steps { get; init; }

    public required IReadOnlyList<RoadMapData> RoadMaps { get; init; }

    /// <summary>Free stretches played out, for call and response.</summary>
    public required IReadOnlyList<CallData> Calls { get; init; }

    /// <summary>Recordings that the sheet lines up.</summary>
    public required IReadOnlyList<RecordingData> Recordings { get; init; }

    public required SoundData Sound { get; init; }

    /// <summary>The pages that can be shown, by the parts on them and their width.</summary>
    public required IReadOnlyList<ViewData> Views { get; init; }
}

/// <summary>A written bar.</summary>
/// <param name="Number">As printed.</param>
/// <param name="Pickup">Whether it is a pickup.</param>
/// <param name="Meter">Such as <c>6/8</c>.</param>
internal sealed record BarData(int Number, bool Pickup, string Meter);

/// <summary>A bar as it is played.</summary>
/// <param name="Bar">Index into the written bars.</param>
/// <param name="Pass">1 for the first time through its repeat.</param>
/// <param name="Start">Seconds.</param>
/// <param name="Quarters">Quarter notes a minute at its start.</param>
/// <param name="Beats">Seconds of the beats of its metre. The first is the bar's start, but in a pickup.</param>
/// <param name="Count">Seconds from beat to beat of a count before it, at its tempo, the last to the bar's start; a full bar, and what a pickup leaves of its bar.</param>
internal sealed record PlayedBarData(int Bar, int Pass, double Start, double Quarters, IReadOnlyList<double> Beats, IReadOnlyList<double> Count);

/// <summary>A stretch of the song that has a name, once as it is played.</summary>
/// <param name="Kind"><c>section</c>, <c>riff</c> or <c>free</c>.</param>
/// <param name="Name">As in the sheet.</param>
/// <param name="Part">The part that plays it; null for a section.</param>
/// <param name="First">Index into the played bars.</param>
/// <param name="Count">Played bars.</param>
internal sealed record StretchData(string Kind, string Name, int? Part, int First, int Count);

/// <summary>A recording that a student may add.</summary>
/// <param name="Name">The file's name.</param>
/// <param name="Points">Places of the song and where the recording has them.</param>
internal sealed record RecordingData(string Name, IReadOnlyList<SyncData> Points);

/// <summary>A place of the song and where a recording has it, both in seconds.</summary>
internal sealed record SyncData(double Song, double Take);

/// <summary>The sound inside the page.</summary>
/// <param name="Seconds">The length of each part's sound.</param>
/// <param name="PieceSeconds">The length of each piece but the last.</param>
/// <param name="Pieces">How many pieces each part has; 0 when there is no sound.</param>
/// <param name="Missing">Why there is no sound, a whole sentence; null when there is.</param>
internal sealed record SoundData(double Seconds, double PieceSeconds, int Pieces, string? Missing);

/// <summary>Pages that can be shown.</summary>
/// <param name="Id">The element that holds them, packed.</param>
/// <param name="Part">The part on them; null for all parts.</param>
/// <param name="Narrow">Whether they are for a phone held upright.</param>
internal sealed record ViewData(string Id, int? Part, bool Narrow);
