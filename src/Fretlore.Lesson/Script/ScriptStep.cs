using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Script;

/// <summary>One step of the script: a heading and what it teaches, by name.</summary>
internal sealed record ScriptStep(string Title, ValueList<Taught> Teaches, ValueList<int> SpeedPercents, string? Say)
{
    /// <summary>The steps of the sheet's lesson; without one, each riff that has notes, in the order in which the song first plays it.</summary>
    public static IReadOnlyList<ScriptStep> Of(Song song)
    {
        if (song.Lesson is { Steps.Count: > 0 } lesson) return [.. lesson.Steps
            .Select(s => new ScriptStep(s.Title, s.Teaches, s.SpeedPercents, s.Say))];
        var first = song.RiffUses.GroupBy(u => u.Riff).ToDictionary(g => g.Key, g => g.Min(u => u.FirstBar));
        return [.. song.Riffs.Where(r => !r.IsSilent()).OrderBy(r => first.GetValueOrDefault(r.Name, int.MaxValue))
            .Select(r => new ScriptStep(TitleOf(r), [new Taught(r.Name)], [], null))];
    }

    internal static string TitleOf(Riff riff)
    {
        var name = SpokenName.Of(riff.Name);
        return char.ToUpperInvariant(name[0]) + name[1..];
    }
}
