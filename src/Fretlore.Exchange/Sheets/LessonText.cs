using System.Globalization;
using System.Text;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>Road maps and the lesson's plan.</summary>
internal static class LessonText
{
    public static void WriteRoadMaps(Song song, StringBuilder text)
    {
        foreach (var map in song.RoadMaps)
        {
            text.Append("roadmap ").Append(map.Name).Append('\n');
            foreach (var rule in map.Rules) text.Append("  ").Append(rule).Append('\n');
            text.Append('\n');
        }
    }

    public static void Write(Song song, StringBuilder text)
    {
        if (song.Lesson is not { } lesson) return;
        text.Append("lesson\n");
        if (lesson.Budget is { } budget) text.Append(CultureInfo.InvariantCulture, $"  budget {(int)budget.TotalMinutes}:{budget.Seconds:00}\n");
        if (lesson.SpeakingRate is { } rate) text.Append(CultureInfo.InvariantCulture, $"  speaking-rate {rate}\n");
        if (lesson.Excerpt is { } excerpt) text.Append(CultureInfo.InvariantCulture, $"  excerpt {excerpt}\n");
        foreach (var step in lesson.Steps)
        {
            text.Append("  step ").Append(SheetWords.Quoted(step.Title));
            if (step.Teaches.Count > 0) text.Append(" teach ").Append(string.Join(", ", step.Teaches));
            if (step.SpeedPercents.Count > 0) text.Append(" at ").Append(string.Join(' ', step.SpeedPercents.Select(s => SheetWords.Of(s) + "%")));
            if (step.Length is { } length) text.Append(" as ").Append(LengthWord(length));
            if (step.IsKept) text.Append(" keep");
            if (step.Say is { } say) text.Append(" say ").Append(SheetWords.Quoted(say));
            text.Append('\n');
        }
    }

    private static string LengthWord(StepLength length) => length switch
    {
        StepLength.Headline => "headline",
        StepLength.WalkThrough => "walk-through",
        _ => "note-by-note",
    };
}
