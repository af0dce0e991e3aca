using Fretlore.Hands.Plans;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Lesson.Fingers;

namespace Fretlore.Cli.Output;

/// <summary>The plan of a film, as a person reads it on a terminal.</summary>
internal static class FilmPlanPrinter
{
    public static void Write(TextWriter output, Song song, FilmPlan plan)
    {
        var length = plan.Steps.Count == 0 ? "no film" : $"a film of {ClockText.Of(plan.Seconds)}";
        output.WriteLine($"{Marked.Safe(song.Info.Title)}: {length}{(plan.Budget is { } budget ? $" in a budget of {ClockText.Of(budget)}" : "")}, "
            + $"at {plan.Rate.WordsAMinute} words a minute{(song.Lesson?.SpeakingRate is null ? " (not measured: see speaking-rate)" : "")}.");
        if (plan.Steps.Count > 0)
        {
            output.WriteLine();
            Columns.Write(output, plan.Steps.SelectMany((step, i) => Rows(i + 1, step)).Prepend(["  0:00", "Opening", "", "", $"say {ClockText.Of(plan.OpeningSeconds)}"]));
            output.WriteLine();
            for (var i = 0; i < plan.Steps.Count; i++) WriteStep(output, i + 1, plan.Steps[i]);
        }
        if (plan.LeftOut.Count > 0)
        {
            output.WriteLine("No time for:");
            Columns.Write(output, plan.LeftOut.Select(l => (string[])["  " + Marked.Safe(l.Step.Title), Names(l.Step.Subjects), $"{ClockText.Of(l.ShortestSeconds)} at the shortest"]));
        }
        if (plan.OneMoreMinute.Count > 0) output.WriteLine($"With one more minute: {Marked.Safe(string.Join(' ', plan.OneMoreMinute))}");
        foreach (var remark in plan.Remarks) output.WriteLine(Marked.Safe(remark));
        WriteOffers(output, plan.Offers);
        output.WriteLine(HandData.Cautions);
        output.WriteLine("If the song is someone else's, get a licence from its publisher before you publish the film.");
    }

    private static IEnumerable<string[]> Rows(int number, PlannedStep planned)
    {
        var plays = string.Join(", ", planned.Version.Plays.Select(p => $"{p.Percent}%{(p.Times == 2 ? " twice" : "")} {ClockText.Of(p.Seconds)}"));
        var retune = planned.Before.WordCount > 0 ? "retune, " : "";
        yield return
        [
            "  " + ClockText.At(planned.Start), $"{number}. {Marked.Safe(planned.Step.Title)}", Word(planned.Version.Length), Word(planned.Step.Difficulty),
            $"{retune}say {ClockText.Of(planned.Version.SaySeconds)}{(plays.Length > 0 ? $"; play {plays}" : "")}",
        ];
    }

    private static void WriteStep(TextWriter output, int number, PlannedStep planned)
    {
        var step = planned.Step;
        if (step.Subjects.Count < 2)
        {
            var why = string.Join(' ', step.Subjects.SelectMany(s => s.Why.Breaths));
            output.WriteLine($"{number}. {Marked.Safe(step.Title)}{(step.Subjects.Count > 0 ? ": " + Names(step.Subjects) : "")}. {why}".TrimEnd());
        }
        else
        {
            output.WriteLine($"{number}. {Marked.Safe(step.Title)}.");
            foreach (var subject in step.Subjects) output.WriteLine($"   {Marked.Safe(subject.What.ToString())}: {subject.Why}");
        }
        if (step.Needs.Any()) output.WriteLine($"   Needs {string.Join(", ", step.Needs)} first.");
        var hard = step.Subjects.SelectMany(s => s.HardBecause).Distinct().Take(3).ToArray();
        if (step.Difficulty >= Difficulty.Demanding && hard.Length > 0) output.WriteLine($"   Hard because of {string.Join("; ", hard)}.");
        output.WriteLine();
    }

    private static void WriteOffers(TextWriter output, ValueList<Offer> offers)
    {
        if (offers.Count == 0) return;
        output.WriteLine();
        output.WriteLine("Also in the song, should you want to teach it:");
        Columns.Write(output, offers.Select(o => (string[])["  teach " + Marked.Safe(o.Subject.What.ToString()), Word(o.Subject.Difficulty), Marked.Safe(string.Join(' ', o.Because))]));
        output.WriteLine();
    }

    private static string Names(IEnumerable<Subject> subjects) => Marked.Safe(string.Join(", ", subjects.Select(s => s.What.ToString())));

    internal static string Word(StepLength length) => length switch
    {
        StepLength.Headline => "headline",
        StepLength.WalkThrough => "walk-through",
        _ => "note by note",
    };

    internal static string Word(Difficulty difficulty) => difficulty == Difficulty.None ? "" : difficulty.ToString().ToLowerInvariant();

    internal static string Word(OfferKind kind) => kind.ToString().ToLowerInvariant();
}
