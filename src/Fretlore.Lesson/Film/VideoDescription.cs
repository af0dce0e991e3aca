using System.Text;
using Fretlore.Guitar;
using Fretlore.Lesson.Plans;
using Fretlore.Score;

namespace Fretlore.Lesson.Film;

/// <summary>The text under a published film: what it teaches, its chapters, the tuning, who wrote and owns the song.</summary>
internal static class VideoDescription
{
    public static string Write(Song song, FilmPlan plan)
    {
        var info = song.Info;
        var text = new StringBuilder();
        text.Append("How to play ").Append(ChapterList.OneLine(info.Title)).Append(info.Artist is { Length: > 0 } artist ? $" by {ChapterList.OneLine(artist)}" : "").Append("\n\n");
        foreach (var neck in plan.Steps.Select(s => s.Step.Neck).OfType<Neck>().Distinct())
        {
            text.Append("Tuning, low to high: ").Append(string.Join(' ', neck.Tuning.LowToHigh.Select(p => p.Name.ToString())))
                .Append(neck.Capo.IsOff ? "" : ", " + neck.Capo.Words).Append('\n');
        }
        if (plan.Steps.Count > 0) text.Append('\n').Append(ChapterList.Write(FilmSegment.Of(plan)));
        string[] owners = [.. new[] { info.Credits, info.Rights, info.Permission }.OfType<string>().Where(line => line.Length > 0).Select(ChapterList.OneLine)];
        if (owners.Length > 0) text.Append('\n').Append(string.Join('\n', owners)).Append('\n');
        return text.ToString();
    }
}
