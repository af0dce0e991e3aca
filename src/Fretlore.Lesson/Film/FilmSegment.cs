using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Steps;
using Fretlore.Music;

namespace Fretlore.Lesson.Film;

/// <summary>A chapter of the film: the opening or a step. First it is spoken, then played.</summary>
/// <param name="Title">As in the chapter list.</param>
/// <param name="Step">The step; null for the opening.</param>
/// <param name="Sentences">What is said, in order.</param>
/// <param name="SaySeconds">How long that takes.</param>
/// <param name="Plays">What is played after it.</param>
/// <param name="Start">Seconds from the film's start.</param>
/// <param name="Seconds">How long the chapter is.</param>
public sealed record FilmSegment(
    string Title, PlannedStep? Step, ValueList<string> Sentences, double SaySeconds, ValueList<PlayThrough> Plays, double Start, double Seconds)
{
    /// <summary>What the opening is called.</summary>
    public const string OpeningTitle = "Opening";

    public double End => Start + Seconds;

    /// <summary>The chapters of a film in order; none when nothing is filmed.</summary>
    public static ValueList<FilmSegment> Of(FilmPlan plan)
    {
        if (plan.Steps.Count == 0) return [];
        var opening = new FilmSegment(OpeningTitle, null, plan.Opening.Breaths, plan.OpeningSeconds, [], 0, plan.OpeningSeconds);
        return [opening, .. plan.Steps.Select(Of)];
    }

    private static FilmSegment Of(PlannedStep step)
    {
        var sentences = step.Before.Breaths.Concat(step.Version.Says.Breaths).ToValueList();
        return new FilmSegment(step.Step.Title, step, sentences, step.Seconds - step.Version.PlaySeconds, step.Version.Plays, step.Start, step.Seconds);
    }
}
