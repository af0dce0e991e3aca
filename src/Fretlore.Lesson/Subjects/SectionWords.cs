using Fretlore.Lesson.CallOuts.Words;

namespace Fretlore.Lesson.Subjects;

/// <summary>Sections of a song as they are called in a sentence.</summary>
internal static class SectionWords
{
    // What parts of songs are called by what they do (common practice); any other name needs the word section beside it.
    private static readonly HashSet<string> Forms =
    [
        "intro", "introduction", "verse", "verses", "chorus", "prechorus", "refrain", "hook", "bridge", "middle", "interlude", "break", "breakdown", "build", "drop", "solo", "solos", "theme", "head",
        "coda", "tag", "vamp", "turnaround", "outro", "ending", "end", "close", "opening", "reprise", "riff", "tune", "melody", "instrumental",
    ];

    /// <summary>"the intro", "verse one", "the theme again", "part A", "the slate section".</summary>
    public static string Of(string section)
    {
        var spoken = SpokenName.Of(section);
        var words = spoken.Split(' ');
        if (words[0] == "the") return spoken;
        if (words.Length > 1 && (NumberWords.IsNumber(words[^1]) || words[^1].Length == 1)) return spoken;
        return Forms.Contains(words[0]) || Forms.Contains(words[^1]) ? "the " + spoken : $"the {spoken} section";
    }

    /// <summary>Several, each with "the" or none: "the intro, verse one and the outro".</summary>
    public static string Listed(IEnumerable<string> sections) => SpokenList.Joined(sections.Select(Of), "and");
}
