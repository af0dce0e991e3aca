using Fretlore.Binding.Problems;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lessons;

/// <summary>Checks the bars and parts a lesson points at against the song.</summary>
internal static class LessonCheck
{
    public static void Check(BoundLesson? lesson, Song song, DiagnosticBag problems)
    {
        foreach (var (what, span) in lesson?.PointsAt ?? [])
        {
            if (what.Bars is { } bars) CheckBars(what, bars, span, song, problems);
            if (what.Part is { } part && !song.Sections.Any(s => s.Name == what.Name) && what.Name.Length > 0)
            {
                problems.Add(LessonProblems.PartOfNoSection(span, what.Name, part));
            }
        }
    }

    private static void CheckBars(Taught what, BarRange bars, TextSpan span, Song song, DiagnosticBag problems)
    {
        if (song.RoadMaps.Any(m => m.Name == what.Name))
        {
            problems.Add(LessonProblems.RoadMapHasNoBars(span, what.Name));
            return;
        }
        var (whose, first, last) = what.Name.Length == 0 ? ("The song", song.Bars.Count > 0 ? song.Bars[0].Number : 1, song.Bars.Count > 0 ? song.Bars[^1].Number : 0)
            : song.Riffs.FirstOrDefault(r => r.Name == what.Name) is { } riff ? ($"`{what.Name}`", riff.Bars[0].Number, riff.Bars[^1].Number)
            : song.Sections.FirstOrDefault(s => s.Name == what.Name) is { } section ? ($"`{what.Name}`", 1, section.BarCount)
            : ("", 0, int.MaxValue);
        if (bars.First < first || bars.Last > last) problems.Add(LessonProblems.BarsNotThere(span, whose, last));
    }
}
