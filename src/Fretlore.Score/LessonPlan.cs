using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>What the sheet says about the lesson.</summary>
/// <param name="Budget">Time for the whole film, or null.</param>
/// <param name="Steps">In teaching order.</param>
public sealed record LessonPlan(TimeSpan? Budget, ValueList<LessonStep> Steps);

/// <summary>One step of the lesson.</summary>
/// <param name="Title">As shown.</param>
/// <param name="Teaches">Riffs, sections or road maps by name.</param>
/// <param name="SpeedPercents">Teaching speeds in percent of the song's tempo, 1 to 400.</param>
/// <param name="Say">Words the teacher wants said, or null.</param>
public sealed record LessonStep(string Title, ValueList<string> Teaches, ValueList<int> SpeedPercents, string? Say);
