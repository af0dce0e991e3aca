using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.Script;
using Fretlore.Lesson.Steps;
using Fretlore.Lesson.Subjects;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Plans;

/// <summary>Plans a lesson's film: the sheet's steps, or the song's riffs where it has none, within a time.</summary>
public static class FilmPlanner
{
    /// <param name="played">The song as it sounds.</param>
    /// <param name="reading">Its reading, for names.</param>
    /// <param name="hands">Its hand plan.</param>
    /// <param name="budget">Time for the film instead of the sheet's; null for the sheet's.</param>
    /// <param name="style">The teacher's way of speaking; null for the usual one.</param>
    public static FilmPlanResult Plan(PerformedSong played, SongReading reading, SongHands hands, TimeSpan? budget = null, CallOutStyle? style = null)
    {
        var song = played.Song;
        var rate = song.Lesson?.SpeakingRate is { } measured ? new SpeakingRate(measured) : SpeakingRate.Usual;
        var subjects = new SubjectReader(played, hands);
        var maker = new StepMaker(played, subjects, CallOutContext.Of(song, reading, style ?? new CallOutStyle(), hands), rate);
        var given = song.Lesson is { Steps.Count: > 0 } lesson ? lesson.Steps : [];
        if (given.Count > LengthChoice.MostSteps)
        {
            return new FilmPlanResult.Refused($"The lesson has {given.Count} steps, and one film has at most {LengthChoice.MostSteps}.", "Make several lessons of it, or teach several riffs in one step.");
        }
        var steps = given.Count > 0 ? given.Select(maker.Of).ToImmutableArray() : StepsOfSong(song, maker);
        var seconds = (budget ?? song.Lesson?.Budget)?.TotalSeconds;
        return new FilmPlanning(song, rate, steps, given.Count > 0).Within(seconds, new OfferFinder(played, reading, hands, subjects).Find());
    }

    // Without a lesson in the sheet each riff that is played is a step, in the order that is easiest to learn.
    private static ImmutableArray<TeachingStep> StepsOfSong(Song song, StepMaker maker)
    {
        var first = song.RiffUses.GroupBy(u => u.Riff).ToDictionary(g => g.Key, g => g.Min(u => u.FirstBar));
        TeachingStep[] steps =
        [
            .. song.Riffs.Where(r => !r.IsSilent()).OrderBy(r => first.GetValueOrDefault(r.Name, int.MaxValue)).Take(LengthChoice.MostSteps)
                .Select(r => maker.Of(new LessonStep(ScriptStep.TitleOf(r), [new Taught(r.Name)], [], null))),
        ];
        var necks = Necks(steps);
        var order = StepOrder.Of([.. steps.Select(s => ((int)s.Difficulty, necks[s.Neck!], NeedsOf(s, steps)))]);
        return [.. order.Select(i => steps[i])];
    }

    internal static Dictionary<Neck, int> Necks(IReadOnlyList<TeachingStep> steps) =>
        steps.Select(s => s.Neck).OfType<Neck>().Distinct().Select((neck, i) => (neck, i)).ToDictionary(n => n.neck, n => n.i);

    /// <summary>The steps that teach what a step needs, by index; what no step teaches is not among them.</summary>
    internal static ImmutableArray<int> NeedsOf(TeachingStep step, IReadOnlyList<TeachingStep> steps) =>
        [.. step.Needs.Select(need => Enumerable.Range(0, steps.Count).FirstOrDefault(i => steps[i].Teaches.Contains(need), -1)).Where(i => i >= 0 && steps[i] != step).Distinct()];
}
