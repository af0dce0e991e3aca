using Fretlore.Lesson.Steps;
using Fretlore.Score;

namespace Fretlore.Lesson.Plans;

/// <summary>What a step is worth to a learner, in points; all figures by judgement.</summary>
internal static class StepWorth
{
    // Any step, for its share of the song, for how hard it is, for what only it has, and for opening the song:
    // what is hard, new or known is what people come for.
    private const int Base = 100, ForShare = 600, ForDifficulty = 50, ForOwnTechnique = 100, ForOpening = 150;

    // Percent of the worth that each length gives. Half of it is that a step is there at all; what is hard gains most from every note.
    private static ReadOnlySpan<byte> Headline => [60, 58, 55, 50, 45];

    private static ReadOnlySpan<byte> WalkThrough => [96, 95, 92, 88, 82];

    public static int Of(TeachingStep step) => Base
        + (int)Math.Round(ForShare * step.Subjects.Select(s => s.Share).DefaultIfEmpty(0).Max())
        + ForDifficulty * (int)step.Difficulty
        + (step.Subjects.Any(s => s.HasOwnTechnique) ? ForOwnTechnique : 0)
        + (step.Subjects.Any(s => s.OpensSong) ? ForOpening : 0);

    public static int Of(TeachingStep step, StepLength length) => Of(step) * length switch
    {
        _ when step.Subjects.Count == 0 => 100,
        StepLength.Headline => Headline[(int)step.Difficulty],
        StepLength.WalkThrough => WalkThrough[(int)step.Difficulty],
        _ => 100,
    } / 100;
}
