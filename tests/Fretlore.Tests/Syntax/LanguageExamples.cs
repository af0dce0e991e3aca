using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Syntax;

/// <summary>The examples of docs/language.md as complete sheets.</summary>
internal static class LanguageExamples
{
    /// <summary>An example.</summary>
    /// <param name="Line">Line of the document it begins on, from 1.</param>
    /// <param name="Sheet">The sheet; the music of a riff stands in one that plays it.</param>
    public sealed record Example(int Line, string Sheet);

    public static string Document { get; } = Path.Combine(Repository.Root, "docs", "language.md");

    public static IReadOnlyList<Example> All { get; } = [.. Read()];

    private static IEnumerable<Example> Read()
    {
        var lines = File.ReadAllLines(Document);
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i] is not ("```lore" or "```lore-riff")) continue;
            var end = Array.IndexOf(lines, "```", i);
            var text = lines[(i + 1)..end];
            yield return new Example(i + 1, lines[i] == "```lore" ? string.Join('\n', text) + "\n" : AsRiff(text));
            i = end;
        }
    }

    private static string AsRiff(string[] music) =>
        $"title Example\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 100\n\nriff example\n  {string.Join("\n  ", music)}\n\nsection Only\n  example\n";
}
