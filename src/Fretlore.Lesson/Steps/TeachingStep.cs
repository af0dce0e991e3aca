using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Steps;

/// <summary>One playing of a step's music on film, after a bar of counting in.</summary>
/// <param name="Percent">Of the song's tempo.</param>
/// <param name="Tempo">The tempo at that speed.</param>
/// <param name="Times">How often it is played through.</param>
/// <param name="Seconds">Everything, the count-in included.</param>
public sealed record PlayThrough(int Percent, Tempo Tempo, int Times, double Seconds);

/// <summary>A step at one length.</summary>
/// <param name="Length">Headline, walk-through or note by note.</param>
/// <param name="Says">What is said.</param>
/// <param name="SaySeconds">How long that takes at the teacher's speaking rate.</param>
/// <param name="Plays">What is played, slowest first.</param>
public sealed record StepVersion(StepLength Length, Speech Says, double SaySeconds, ValueList<PlayThrough> Plays)
{
    public double PlaySeconds => Plays.Sum(play => play.Seconds);

    public double Seconds => SaySeconds + PlaySeconds;
}

/// <summary>A step of the lesson at all the lengths it can be told at.</summary>
/// <param name="Title">As shown.</param>
/// <param name="Subjects">What it teaches; none when there are only words to say.</param>
/// <param name="Versions">Shortest first.</param>
/// <param name="IsKept">True when it may be shortened but not left out.</param>
/// <param name="Neck">The neck it is played on; null when nothing is played.</param>
public sealed record TeachingStep(string Title, ValueList<Subject> Subjects, ValueList<StepVersion> Versions, bool IsKept, Neck? Neck)
{
    /// <summary>Riffs it teaches whole, by name.</summary>
    public IEnumerable<string> Teaches => Subjects.Where(s => s.Kind == SubjectKind.Riff).Select(s => s.What.Name);

    /// <summary>Riffs that should be known before it, by name.</summary>
    public IEnumerable<string> Needs => Subjects.SelectMany(s => s.Needs).Except(Teaches).Distinct();

    public Hands.Plans.Difficulty Difficulty => Subjects.Select(s => s.Difficulty).DefaultIfEmpty(Hands.Plans.Difficulty.None).Max();
}
