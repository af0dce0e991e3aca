using Fretlore.Score;

namespace Fretlore.Lesson.Script;

/// <summary>Where in the song a riff is played, as sections and printed bar numbers.</summary>
internal static class Whereabouts
{
    /// <summary>One line for each part and section: "Verse 1, bars 7 to 22 (Rhythm guitar)".</summary>
    public static IEnumerable<string> Of(Song song, string riff)
    {
        var stretches = song.RiffUses.Where(u => u.Riff == riff).OrderBy(u => u.Part).ThenBy(u => u.FirstBar)
            .GroupBy(u => (u.Part, Section: SectionAt(song, u.FirstBar)?.FirstBar ?? -1));
        foreach (var group in stretches)
        {
            var section = SectionAt(song, group.First().FirstBar);
            var part = song.Parts.Count > 1 ? $" ({Markdown.Escape(song.Parts[group.Key.Part].Title)})" : "";
            yield return (section is null ? ""
                : Markdown.Escape(section.Name) + ", ") + Bars(song, [.. group.Select(u => (u.FirstBar, u.FirstBar + u.BarCount))]) + part;
        }
    }

    /// <summary>The printed numbers of a stretch of bars: "bar 4", "bars 1 to 8".</summary>
    public static string Bars(Song song, (int First, int End)[] stretches)
    {
        var joined = new List<(int First, int End)>();
        foreach (var stretch in stretches)
        {
            if (joined.Count > 0 && joined[^1].End == stretch.First) joined[^1] = (joined[^1].First, stretch.End);
            else joined.Add(stretch);
        }
        var one = joined.Count == 1 && joined[0].End - joined[0].First < 2;
        return (one ? "bar " : "bars ") + string.Join(", ", joined.Select(s => Range(song, s.First, s.End)));
    }

    private static Section? SectionAt(Song song, int bar) =>
        song.Sections.LastOrDefault(s => s.FirstBar <= bar && bar < s.FirstBar + s.BarCount);

    private static string Range(Song song, int first, int end)
    {
        var from = song.Bars[first].Number;
        var to = song.Bars[Math.Min(end, song.Bars.Count) - 1].Number;
        return from == to ? $"{from}" : $"{from} to {to}";
    }
}
