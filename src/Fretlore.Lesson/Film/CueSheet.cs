using System.Globalization;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Script;
using Fretlore.Score;

namespace Fretlore.Lesson.Film;

/// <summary>What lies beside the camera: each chapter's time, its first words, and what is played at which tempo.</summary>
internal static class CueSheet
{
    public static string Write(Song song, FilmPlan plan)
    {
        var text = new Markdown();
        text.Heading(1, $"Cues: {Markdown.Escape(song.Info.Title)}");
        var segments = FilmSegment.Of(plan);
        if (segments.Count == 0)
        {
            foreach (var remark in plan.Remarks) text.Paragraph(Markdown.Escape(remark));
            return text.ToString();
        }
        text.Paragraph($"{ClockText.Of(plan.Seconds)} in {(plan.Budget is { } budget ? $"a budget of {ClockText.Of(budget)}" : "all")}; spoken at {plan.Rate.WordsAMinute} words a minute.");
        for (var i = 0; i < segments.Count; i++) Write(text, song, segments[i], i);
        if (plan.LeftOut.Count > 0)
        {
            text.Heading(2, "Not in the film");
            foreach (var left in plan.LeftOut) text.Item($"{Markdown.Escape(left.Step.Title)}, {ClockText.Of(left.ShortestSeconds)} at the shortest");
        }
        return text.ToString();
    }

    private static void Write(Markdown text, Song song, FilmSegment segment, int number)
    {
        text.Heading(2, $"{ClockText.At(segment.Start)} {(number == 0 ? "" : $"{number}. ")}{Markdown.Escape(segment.Title)}");
        if (segment.Step is { } planned) text.Item($"On camera: {Names(planned)}{Neck(planned, song)}");
        if (segment.Sentences.Count > 0)
        {
            var words = segment.Sentences.Count == 1 ? segment.Sentences[0] : $"{segment.Sentences[0]} … {segment.Sentences[^1]}";
            text.Item($"Say ({ClockText.Of(segment.SaySeconds)}): {Markdown.Escape(words)}");
        }
        var at = segment.Start + segment.SaySeconds;
        foreach (var play in segment.Plays)
        {
            var percent = play.Percent.ToString(CultureInfo.InvariantCulture);
            text.Item($"{ClockText.At(at)} play at {percent} %, {TempoText.Of(play.Tempo)}, a bar counted in{(play.Times == 2 ? ", twice through" : "")} ({ClockText.Of(play.Seconds)})");
            at += play.Seconds;
        }
    }

    private static string Names(PlannedStep planned) => planned.Step.Subjects.Count == 0 ? "you, talking"
        : Markdown.Escape(string.Join(", ", planned.Step.Subjects.Select(s => s.What.ToString())));

    private static string Neck(PlannedStep planned, Song song) => planned.Step.Neck is { } neck && (song.Parts.Any(p => p.Neck != neck) || !neck.Capo.IsOff)
        ? $"; tuned {neck.Tuning}{(neck.Capo.IsOff ? "" : $", capo {neck.Capo}")}"
        : "";
}
