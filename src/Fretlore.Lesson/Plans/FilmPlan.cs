using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.Steps;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;

namespace Fretlore.Lesson.Plans;

/// <summary>A step as it is filmed.</summary>
/// <param name="Step">The step.</param>
/// <param name="Version">At the length chosen.</param>
/// <param name="Before">What is said before it because the guitar has to be tuned anew; else nothing.</param>
/// <param name="Start">Seconds from the film's start.</param>
/// <param name="Seconds">How long it takes, <paramref name="Before"/> included.</param>
public sealed record PlannedStep(TeachingStep Step, StepVersion Version, Speech Before, double Start, double Seconds);

/// <summary>A step there is no time for.</summary>
/// <param name="Step">The step.</param>
/// <param name="ShortestSeconds">What it would take at its shortest.</param>
public sealed record LeftOutStep(TeachingStep Step, double ShortestSeconds);

/// <summary>The plan of a lesson's film: what is said and played, when and for how long.</summary>
/// <param name="Budget">Seconds it may take, or null for any time.</param>
/// <param name="Rate">How fast the teacher speaks.</param>
/// <param name="Opening">What is said first: the song and how to tune.</param>
/// <param name="OpeningSeconds">How long that takes.</param>
/// <param name="Steps">In the order filmed.</param>
/// <param name="LeftOut">Steps there is no time for, in order.</param>
/// <param name="OneMoreMinute">What one more minute would buy, in whole sentences; empty where everything is in at its longest.</param>
/// <param name="Remarks">What the teacher should know, in whole sentences.</param>
/// <param name="Offers">What else of the song could be taught.</param>
public sealed record FilmPlan(
    double? Budget, SpeakingRate Rate, Speech Opening, double OpeningSeconds, ValueList<PlannedStep> Steps, ValueList<LeftOutStep> LeftOut,
    ValueList<string> OneMoreMinute, ValueList<string> Remarks, ValueList<Offer> Offers)
{
    /// <summary>The whole film.</summary>
    public double Seconds => Steps.Count == 0 ? 0 : OpeningSeconds + Steps.Sum(step => step.Seconds);
}

/// <summary>A film's plan, or why there is none.</summary>
public abstract record FilmPlanResult
{
    private FilmPlanResult()
    {
    }

    public sealed record Made(FilmPlan Plan) : FilmPlanResult;

    /// <param name="Reason">What is wrong, a whole sentence.</param>
    /// <param name="Remedy">What to do about it, a whole sentence.</param>
    public sealed record Refused(string Reason, string Remedy) : FilmPlanResult;
}
