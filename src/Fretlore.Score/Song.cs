using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>What is printed about a song.</summary>
/// <param name="Title">The song's title.</param>
/// <param name="Artist">Who plays it.</param>
/// <param name="Credits">Who wrote it.</param>
/// <param name="Rights">The rights line.</param>
/// <param name="Permission">Under what permission or licence the song is taught and handed out, or null when the sheet does not say.</param>
/// <param name="Language">The language of its title and its sections' names, as a language tag (BCP 47) such as <c>fr</c> or <c>pt-BR</c>, or null when the sheet does not say.</param>
public sealed record SongInfo(string Title, string? Artist = null, string? Credits = null, string? Rights = null, string? Permission = null, string? Language = null);

/// <summary>A whole song in written order: bars shared by all parts, and what each part plays in them.</summary>
public sealed record Song
{
    public required SongInfo Info { get; init; }

    public required ValueList<Bar> Bars { get; init; }

    public required ValueList<Part> Parts { get; init; }

    public ValueList<Section> Sections { get; init; }

    public ValueList<Riff> Riffs { get; init; }

    public ValueList<RiffUse> RiffUses { get; init; }

    public ValueList<NamedShape> Shapes { get; init; }

    public ValueList<RoadMap> RoadMaps { get; init; }

    public ValueList<RoadMapUse> RoadMapUses { get; init; }

    public LessonPlan? Lesson { get; init; }

    /// <summary>Recordings of it that the sheet lines up.</summary>
    public ValueList<Recording> Recordings { get; init; }

    /// <summary>How many notes have an id; parts, grace notes and riff definitions together.</summary>
    public required int NoteCount { get; init; }
}
