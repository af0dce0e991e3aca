using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.Script;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;

namespace Fretlore.Lesson.Steps;

/// <summary>Makes the steps of a lesson: what is said and played in each at every length.</summary>
internal sealed class StepMaker(PerformedSong played, SubjectReader subjects, CallOutContext callOuts, SpeakingRate rate)
{
    private readonly Song song = played.Song;
    private readonly Playing playing = new(played);
    private readonly StepWords words = new(played.Song, callOuts);

    public TeachingStep Of(LessonStep step)
    {
        var taught = step.Teaches.Select(subjects.Of).ToArray();
        var percents = (step.SpeedPercents.Count > 0 ? step.SpeedPercents : UsualPercents(taught)).Order().Distinct().ToArray();
        // There is only one way to tell rests, and nothing to play.
        var isSilent = taught.Length > 0 && taught.All(s => s.IsSilent);
        StepLength[] lengths = isSilent ? [StepLength.Headline] : step.Length is { } only ? [only] : taught.Length == 0 ? [StepLength.Headline] : Enum.GetValues<StepLength>();
        var versions = lengths.Select(length => Version(length, step.Say, taught, isSilent ? [] : percents));
        return new TeachingStep(step.Title, taught.ToValueList(), versions.ToValueList(), step.IsKept, NeckOf(taught));
    }

    private StepVersion Version(StepLength length, string? say, Subject[] taught, int[] percents)
    {
        var says = words.Of(length, say, taught);
        int[] played = length switch
        {
            StepLength.Headline => [.. percents.TakeLast(1)],
            StepLength.WalkThrough => [.. percents.Take(1).Concat(percents.TakeLast(1)).Distinct()],
            _ => percents,
        };
        return new StepVersion(length, says, rate.Seconds(says), played.Select(p => playing.At(taught, p)).OfType<PlayThrough>().ToValueList());
    }

    // What has no riff to slow down, a section or a free stretch, is played at full speed.
    private static ValueList<int> UsualPercents(Subject[] taught) =>
        taught.Any(s => s.Kind is SubjectKind.Riff or SubjectKind.Passage) ? TempoText.UsualPercents : [100];

    private Guitar.Neck? NeckOf(Subject[] taught) =>
        taught.SelectMany(s => s.Lines).FirstOrDefault()?.Riff.Neck
        ?? (taught.SelectMany(s => s.Places).Select(p => song.Parts[p.Part].Neck).FirstOrDefault());
}
