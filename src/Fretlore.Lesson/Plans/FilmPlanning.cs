using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.Script;
using Fretlore.Lesson.Steps;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Plans;

/// <summary>Fits the steps of one lesson into a time.</summary>
internal sealed class FilmPlanning
{
    private const int Minute = 600;

    private readonly Song song;
    private readonly SpeakingRate rate;
    private readonly ImmutableArray<TeachingStep> steps;
    private readonly ImmutableArray<ChoiceStep> choices;
    private readonly Neck[] necks;
    private readonly LengthChoice choice;
    private readonly bool isFromSheet;

    public FilmPlanning(Song song, SpeakingRate rate, ImmutableArray<TeachingStep> steps, bool isFromSheet)
    {
        (this.song, this.rate, this.steps, this.isFromSheet) = (song, rate, steps, isFromSheet);
        var numbers = FilmPlanner.Necks(steps);
        necks = [.. numbers.OrderBy(n => n.Value).Select(n => n.Key)];
        choices = [.. steps.Select(step => new ChoiceStep(
            [.. step.Versions.Select(v => new StepOption(Tenths(v.Seconds), StepWorth.Of(step, v.Length)))],
            step.IsKept, FilmPlanner.NeedsOf(step, steps), step.Neck is { } neck ? numbers[neck] : -1))];
        choice = new LengthChoice(choices, (from, to) => Tenths(rate.Seconds(from < 0 ? OpeningWords.Of(song, necks[to]) : OpeningWords.Retune(necks[from], necks[to]))));
    }

    public FilmPlanResult Within(double? budget, ValueList<Offer> offers)
    {
        var most = budget is { } seconds ? (int)Math.Floor(seconds * 10) : int.MaxValue;
        if (choice.Within(most) is not { } chosen)
        {
            var least = Clock(choice.Shortest().Tenths / 10.0);
            return new FilmPlanResult.Refused($"The steps that must be kept, with what they need, take {least} at the least, and the film has {Clock(budget!.Value)}.",
                $"Give the film {least} or more, or take `keep` off a step.");
        }
        var planned = Steps(chosen);
        var (opening, openingSeconds) = planned.Count == 0 ? (Speech.Silence, 0) : Opening(planned);
        var leftOut = Enumerable.Range(0, steps.Length).Where(i => chosen.Options[i] < 0).Select(i => new LeftOutStep(steps[i], steps[i].Versions[0].Seconds));
        var plan = new FilmPlan(budget, rate, opening, openingSeconds, planned, leftOut.ToValueList(),
            most == int.MaxValue ? [] : OneMoreMinute(chosen, most), Remarks(planned.Count, budget), New(offers));
        return new FilmPlanResult.Made(plan);
    }

    private ValueList<PlannedStep> Steps(Chosen chosen)
    {
        var planned = new List<PlannedStep>();
        var neck = steps.Where((_, i) => chosen.Options[i] >= 0).Select(s => s.Neck).FirstOrDefault(n => n is not null);
        var first = neck;
        var at = rate.Seconds(OpeningWords.Of(song, neck));
        for (var i = 0; i < steps.Length; i++)
        {
            if (chosen.Options[i] < 0) continue;
            var before = steps[i].Neck is { } now && neck is not null && now != neck ? OpeningWords.Retune(neck, now) : Speech.Silence;
            neck = steps[i].Neck ?? neck;
            var version = steps[i].Versions[chosen.Options[i]];
            var seconds = rate.Seconds(before) + version.Seconds;
            planned.Add(new PlannedStep(steps[i], version, before, at, seconds));
            at += seconds;
        }
        return planned.ToValueList();
    }

    private (Speech, double) Opening(ValueList<PlannedStep> planned)
    {
        var says = OpeningWords.Of(song, planned.Select(p => p.Step.Neck).FirstOrDefault(n => n is not null));
        return (says, rate.Seconds(says));
    }

    private ValueList<string> OneMoreMinute(Chosen now, int most)
    {
        var longest = choices.Sum(c => c.Options.Max(o => o.Worth));
        if (now.Worth == longest) return [];
        // A minute adds; only where it can't, something told shorter may make room for what is worth more.
        var then = choice.Within(most + Minute, now.Options);
        if (then is null || then.Worth == now.Worth) then = choice.Within(most + Minute)!;
        string[] Changes(Func<int, bool> which) => [.. Enumerable.Range(0, steps.Length).Where(which).Select(i => Change(steps[i], now.Options[i], then.Options[i]))];
        var buys = Changes(i => then.Options[i] > now.Options[i]).Select(change => change + ".").ToList();
        if (Changes(i => then.Options[i] < now.Options[i]) is { Length: > 0 } costs) buys.Add($"In return, {string.Join(", and ", costs)}.");
        return buys.Count > 0 ? buys.ToValueList() : ["One more minute is not enough for anything that is missing."];
    }

    private static string Change(TeachingStep step, int now, int then) => then < 0
        ? $"“{step.Title}” would make room"
        : now < 0 ? $"“{step.Title}” would be in, {Words(step.Versions[then].Length)}"
        : $"“{step.Title}” would be told {Words(step.Versions[then].Length)} instead of {Words(step.Versions[now].Length)}";

    internal static string Words(StepLength length) => length switch
    {
        StepLength.Headline => "as a headline",
        StepLength.WalkThrough => "as a walk-through",
        _ => "note by note",
    };

    private ValueList<string> Remarks(int planned, double? budget)
    {
        var remarks = new List<string>();
        if (steps.Length == 0) remarks.Add("The sheet names no riffs and no lesson steps, so there is nothing to plan. Give a passage a name with a riff block.");
        else if (planned == 0) remarks.Add($"Nothing fits into {Clock(budget ?? 0)}: the shortest step takes {Clock(Shortest())} with the opening.");
        var taught = new HashSet<string>();
        foreach (var step in steps)
        {
            taught.UnionWith(step.Teaches);
            foreach (var need in step.Needs.Where(need => !taught.Contains(need)))
            {
                remarks.Add(steps.Any(s => s.Teaches.Contains(need))
                    ? $"“{step.Title}” builds on {need}, which a later step teaches: move it after that one."
                    : $"“{step.Title}” builds on {need}, which no step teaches.");
            }
        }
        if (!isFromSheet && steps.Length > 0) remarks.Add("The sheet has no lesson block, so every riff is a step, in the order that is easiest to learn.");
        return remarks.ToValueList();
    }

    private double Shortest() => choices.Where(c => c.Needs.IsEmpty).Min(c => c.Options.Min(o => o.Tenths)
        + Tenths(rate.Seconds(OpeningWords.Of(song, c.Neck < 0 ? null : necks[c.Neck])))) / 10.0;

    // What a step teaches already is no offer.
    private ValueList<Offer> New(ValueList<Offer> offers)
    {
        var taught = steps.SelectMany(s => s.Subjects).Select(s => s.What).ToHashSet();
        return offers.Where(o => !taught.Contains(o.Subject.What)).ToValueList();
    }

    private static int Tenths(double seconds) => (int)Math.Ceiling(seconds * 10 - 1e-6);

    private static string Clock(double seconds) => ClockText.Of(seconds);
}
