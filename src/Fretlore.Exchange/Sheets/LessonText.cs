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
            if (map.Scale is { } scale) Rule($"scale   {scale.Tonic} {scale.Name}");
            if (map.Strings is { } strings) Rule($"strings {strings.Highest}-{strings.Lowest}");
            if (map.FromFret is { } from && map.ToFret is { } to) Rule($"from    fret {from} to fret {to}");
            if (map.Density is { } density) Rule($"density {SheetWords.Letter(density.Slowest)} to {SheetWords.Letter(density.Fastest)}");
            foreach (var aim in map.Aims)
            {
                Rule($"aim     {aim.Target}{(aim.How is { } how ? " " + how : "")}{(aim.Bar is { } bar ? string.Create(CultureInfo.InvariantCulture, $" in bar {bar}") : "")}");
            }
            if (map.Avoid.Count > 0) Rule("avoid   " + string.Join(", ", map.Avoid));
            if (map.MayUse.Count > 0) Rule("may use " + string.Join(", ", map.MayUse));
            text.Append('\n');
        }

        void Rule(string line) => text.Append("  ").Append(line).Append('\n');
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
