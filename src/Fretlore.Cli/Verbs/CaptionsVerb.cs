using System.CommandLine;
using System.Text;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Lesson.Captions;
using Fretlore.Lesson.Film;
using Fretlore.Music;
using Fretlore.Lesson.Plans;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore captions</c>: writes the captions of a film, as planned or in time with its recording.</summary>
internal static class CaptionsVerb
{
    private sealed record Asked(string Sheet, string Output, string? Chapters, string? Minutes, int? Step);

    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input." };
        var output = new Option<string>("--output", "-o") { Description = "The file to write, NAME.vtt.", HelpName = "FILE", Required = true };
        var chapters = new Option<string?>("--chapters")
        {
            Description = "The chapters of the recording, a line each: 1:23 Main riff; the last line may be 6:02 End. The kit's film/chapters.txt is a start.",
            HelpName = "FILE",
        };
        var minutes = new Option<string?>("--minutes") { Description = "Time for the film instead of the sheet's budget: 6, 6.5 or 6:30.", HelpName = "N" };
        var step = new Option<int?>("--step") { Description = "Only this step of the plan, by its number, from its own start on.", HelpName = "N" };
        var verb = new Verb(
            "captions", "Write the captions of a lesson's film (WebVTT): as planned, or in time with the recording.",
            "fretlore captions my-song.lore -o film.vtt", "fretlore captions my-song.lore --chapters recorded.txt -o film.vtt") { sheet, output, chapters, minutes, step };
        verb.SetAction(parsed => Run(surroundings, new Asked(
            parsed.GetRequiredValue(sheet), parsed.GetRequiredValue(output), parsed.GetValue(chapters), parsed.GetValue(minutes), parsed.GetValue(step))));
        return verb;
    }

    private static int Run(Surroundings surroundings, Asked asked)
    {
        TimeSpan? budget = null;
        if (asked.Minutes is not null)
        {
            var time = FilmTimeText.Read(asked.Minutes);
            if (time.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
            budget = time.Value;
        }
        if (OpenedSheet.Open(surroundings, asked.Sheet, "No captions were written", out var code) is not { } opened) return code;
        if (opened.PlanFilm(surroundings, budget, out code) is not { } plan) return code;
        return OutputPlace.RefuseFile(surroundings, asked.Output) ?? Write(surroundings, asked, plan);
    }

    private static int Write(Surroundings surroundings, Asked asked, FilmPlan plan)
    {
        var segments = FilmSegment.Of(plan);
        if (segments.Count == 0) return WrongUse.Write(surroundings.Error, "the film has no steps, so there is nothing to caption.", string.Join(' ', plan.Remarks));
        RecordedTimes? times = null;
        if (asked.Chapters is { } chapters)
        {
            if (!TryRead(surroundings, chapters, out var text)) return ExitCode.WrongUse;
            (times, var problem) = ChapterList.Read(text, segments);
            if (problem is not null)
            {
                var where = problem.Line > 0 ? $"{chapters}:{problem.Line}" : chapters;
                return WrongUse.Write(surroundings.Error, $"{where}: {problem.Message}{(problem.Text.Length > 0 ? $" It says: {Marked.Safe(problem.Text)}" : "")}", problem.Remedy);
            }
        }
        if (asked.Step is { } number && (number < 1 || number >= segments.Count))
        {
            return WrongUse.Write(surroundings.Error, $"the film has no step {number}.", $"Its steps are 1 to {segments.Count - 1}; `fretlore lesson` prints them.");
        }
        var track = asked.Step is { } step ? OfStep(segments, step, times) : CaptionMaker.OfFilm(plan, times);
        if (track.Captions.Count == 0)
        {
            return WrongUse.Write(surroundings.Error, $"nothing is said or played in “{segments[asked.Step ?? 0].Title}”, so it has no captions.", "Give the step something to teach, or words with `say`.");
        }
        foreach (var problem in track.Problems) surroundings.Error.WriteLine(problem);
        return WriteFile(surroundings, asked.Output, Encoding.UTF8.GetBytes(WebVtt.Write(track)), track);
    }

    private static CaptionTrack OfStep(ValueList<FilmSegment> segments, int step, RecordedTimes? times) => times is null
        ? CaptionMaker.OfSegment(segments[step])
        : CaptionMaker.OfSegment(segments[step], 0, (long)Math.Round((times.EndOf(step) - times.Starts[step]) * 1000));

    private static bool TryRead(Surroundings surroundings, string path, out string text)
    {
        try
        {
            text = Encoding.UTF8.GetString(AnyFile.Read(surroundings.PathOf(path)));
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            text = "";
            WrongUse.Write(surroundings.Error, $"{path} can't be read: {Reason.Of(e)}", "Give the file of the recording's chapters with --chapters.");
            return false;
        }
    }

    private static int WriteFile(Surroundings surroundings, string output, byte[] bytes, CaptionTrack track)
    {
        try
        {
            SafeFile.Write(surroundings.PathOf(output), (stream, _) => stream.Write(bytes));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return WrongUse.Write(surroundings.Error, $"{output} can't be written: {Reason.Of(e)}", "Choose another name with -o.");
        }
        surroundings.Out.WriteLine($"{output}: {track.Captions.Count} captions, to {ClockText.Of(track.Captions[^1].End / 1000.0)}.");
        return ExitCode.Fine;
    }
}
