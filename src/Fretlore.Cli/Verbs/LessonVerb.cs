using System.CommandLine;
using System.Text.Json;
using Fretlore.Cli.Files;
using Fretlore.Cli.Json;
using Fretlore.Cli.Output;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Subjects;
using Fretlore.Score;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore lesson</c>: plans the film of a lesson within its time.</summary>
internal static class LessonVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input." };
        var minutes = new Option<string?>("--minutes") { Description = "Time for the film instead of the sheet's budget: 6, 6.5 or 6:30.", HelpName = "N" };
        var json = new Option<bool>("--json") { Description = "Print the plan as JSON, with every word that is said." };
        var verb = new Verb(
            "lesson", "Plan a lesson's film: which steps, how long each is told, what there is no time for, and what else the song has to teach.",
            "fretlore lesson my-song.lore", "fretlore lesson my-song.lore --minutes 4:30 --json") { sheet, minutes, json };
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(sheet), parsed.GetValue(minutes), parsed.GetValue(json)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string path, string? minutes, bool asJson)
    {
        TimeSpan? budget = null;
        if (minutes is not null)
        {
            var time = FilmTimeText.Read(minutes);
            if (time.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
            budget = time.Value;
        }
        if (OpenedSheet.Open(surroundings, path, "No lesson was planned", out var code) is not { } opened) return code;
        if (opened.PlanFilm(surroundings, budget, out code) is not { } plan) return code;
        if (asJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(Answer(opened.Song, plan), AnswerJson.Readable.LessonAnswer));
        else FilmPlanPrinter.Write(surroundings.Out, opened.Song, plan);
        return ExitCode.Fine;
    }

    private static LessonAnswer Answer(Song song, FilmPlan plan) => new(
        song.Info.Title, plan.Budget, Rounded(plan.Seconds), plan.Rate.WordsAMinute, new LessonOpening(plan.Opening.Breaths, Rounded(plan.OpeningSeconds)),
        [.. plan.Steps.Select((step, i) => Line(i + 1, step))],
        [.. plan.LeftOut.Select(l => new LeftOutLine(l.Step.Title, Names(l.Step.Subjects), Rounded(l.ShortestSeconds)))],
        plan.OneMoreMinute, plan.Remarks, [.. plan.Offers.Select(Line)]);

    private static LessonStepLine Line(int number, PlannedStep planned)
    {
        var (step, version) = (planned.Step, planned.Version);
        return new LessonStepLine(
            number, step.Title, Names(step.Subjects), FilmPlanPrinter.Word(version.Length), Rounded(planned.Start), Rounded(version.SaySeconds), Rounded(version.PlaySeconds),
            FilmPlanPrinter.Word(step.Difficulty), [.. step.Subjects.SelectMany(s => s.HardBecause).Distinct()], [.. step.Needs],
            [.. step.Subjects.SelectMany(s => s.Why.Breaths)], planned.Before.Breaths, version.Says.Breaths,
            [.. version.Plays.Select(p => new PlayLine(p.Percent, Rounded(p.Tempo.QuartersPerMinute), p.Times, Rounded(p.Seconds)))]);
    }

    private static OfferLine Line(Offer offer) => new(
        offer.Subject.What.ToString(), FilmPlanPrinter.Word(offer.Kind), FilmPlanPrinter.Word(offer.Subject.Difficulty), Rounded(offer.Subject.SecondsHeard), offer.Because);

    private static IReadOnlyList<string> Names(IEnumerable<Subject> subjects) => [.. subjects.Select(s => s.What.ToString())];

    private static double Rounded(double seconds) => Math.Round(seconds, 2);
}
