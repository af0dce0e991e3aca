using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Fretlore.Syntax;

/// <summary>The words of the sheet language, each group in one table.</summary>
public static class Vocabulary
{
    /// <summary>Words that begin a block at the start of a line.</summary>
    public static ImmutableArray<string> Blocks { get; } = ["part", "shape", "riff", "section", "roadmap", "lesson", "recording"];

    /// <summary>Settings of the whole song, at the start of a line.</summary>
    public static ImmutableArray<string> SongSettings { get; } =
        ["title", "artist", "credits", "rights", "permission", "language", "tuning", "meter", "tempo", "key", "feel", "capo", "scale-length", "gauges", "frets"];

    /// <summary>Settings of a part, on its line or indented below it.</summary>
    public static ImmutableArray<string> PartSettings { get; } = ["tuning", "capo", "scale-length", "gauges", "frets", "sound"];

    /// <summary>Settings of a riff, each on a line of its own before the music.</summary>
    public static ImmutableArray<string> RiffSettings { get; } = ["tuning", "meter", "tempo", "key", "feel", "capo"];

    /// <summary>Settings within a section, each on a line of its own.</summary>
    public static ImmutableArray<string> SectionSettings { get; } = ["meter", "tempo", "key", "feel"];

    /// <summary>Rules of a road map, one a line.</summary>
    public static ImmutableArray<string> RoadMapRules { get; } =
    [
        "fixed", "scale", "roles", "strings", "from", "frets", "contour", "density", "rhythm", "may", "aim", "avoid", "end",
    ];

    /// <summary>Settings of a lesson, one a line.</summary>
    public static ImmutableArray<string> LessonSettings { get; } = ["budget", "speaking-rate", "excerpt", "step"];

    /// <summary>Settings of a recording, one a line.</summary>
    public static ImmutableArray<string> RecordingSettings { get; } = ["bar"];

    /// <summary>Spans written <c>pm{ … }</c> or from <c>pm on</c> to <c>pm off</c>.</summary>
    public static ImmutableArray<string> Spans { get; } = ["pm", "let", "trem", "arm", "wah", "cresc", "dim"];

    /// <summary>Strands beside the main one.</summary>
    public static ImmutableArray<string> Strands { get; } = ["bass", "drone", "top"];

    /// <summary>Words that mean something within music besides spans and strands.</summary>
    public static ImmutableArray<string> MusicWords { get; } =
    [
        "by", "times", "on", "off", "upbeat", "rest", "again", "pick", "roll", "roll-down", "rake", "roadmap", "lo", "hi", "with", "without", "as",
    ];

    /// <summary>Words that stand before a brace.</summary>
    public static ImmutableArray<string> Groups { get; } = [.. Spans, .. Strands, "by", "times", "on", "upbeat", "pick"];

    private static readonly FrozenSet<string> RiffReserved =
        ((string[])[.. Spans, .. Strands, .. MusicWords, .. SectionSettings]).ToFrozenSet();

    private static readonly FrozenSet<string> PartReserved =
        ((string[])[.. Spans, .. MusicWords, .. SectionSettings]).ToFrozenSet();

    /// <summary>True for a word that no riff may have as its name.</summary>
    public static bool IsReservedForRiffs(string word) => RiffReserved.Contains(word);

    /// <summary>True for a word that no part may have as its name. A part may be called <c>bass</c>: a strand's word has a brace after it.</summary>
    public static bool IsReservedForParts(string word) => PartReserved.Contains(word);
}
