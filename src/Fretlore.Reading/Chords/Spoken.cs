using Fretlore.Music;

namespace Fretlore.Reading.Chords;

/// <summary>Names and lists as they are said aloud.</summary>
internal static class Spoken
{
    internal static string Name(NoteName name) => name.Alteration switch
    {
        0 => name.Step.ToString(),
        1 => name.Step + " sharp",
        -1 => name.Step + " flat",
        2 => name.Step + " double sharp",
        _ => name.Step + " double flat",
    };

    internal static string Degree(Interval degree) => Music.Chords.Degree.Words(degree);

    internal static string Article(string words) => (words[0] is 'e' or 'a' or 'i' or 'o' ? "an " : "a ") + words;

    internal static string Listed(IReadOnlyList<string> words) => words.Count == 1
        ? words[0]
        : string.Join(", ", words.Take(words.Count - 1)) + " and " + words[^1];
}
