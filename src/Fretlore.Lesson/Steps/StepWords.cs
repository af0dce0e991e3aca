using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.RoadMaps;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Steps;

/// <summary>What is said in a step, at each of its lengths.</summary>
internal sealed class StepWords(Song song, CallOutContext callOuts)
{
    private readonly Dictionary<string, CallOut> told = [];

    public Speech Of(StepLength length, string? say, IReadOnlyList<Subject> subjects)
    {
        var breaths = new List<string>();
        if (say is not null) breaths.AddRange(Sentences.Of(say));
        foreach (var subject in subjects)
        {
            if (subjects.Count > 1) breaths.Add(Name(subject));
            if (length != StepLength.Headline) breaths.AddRange(subject.Why.Breaths);
            breaths.AddRange(Told(subject, length));
        }
        return new Speech(breaths.ToValueList());
    }

    private IEnumerable<string> Told(Subject subject, StepLength length) => subject.Kind switch
    {
        SubjectKind.Section => Section(subject, length),
        SubjectKind.RoadMap => RoadMap(subject.RoadMap!, length),
        _ => subject.Lines.SelectMany(line => Line(line.Riff, length)),
    };

    private IEnumerable<string> Line(Riff riff, StepLength length)
    {
        var callOut = CallOutOf(riff);
        var more = length switch { _ when riff.IsSilent() => Speech.Silence, StepLength.Headline => Speech.Silence, StepLength.WalkThrough => callOut.WalkThrough, _ => callOut.NoteByNote };
        // What it is the same as is said once, where what changes comes right after it.
        return callOut.Headline.Breaths.Where(breath => more.Breaths.Count == 0 || breath != more.Breaths[0]).Concat(more.Breaths);
    }

    // The order of its riffs; then what the lesson has not told as a riff of its own, or everything.
    private IEnumerable<string> Section(Subject subject, StepLength length)
    {
        foreach (var order in new SectionOrder(song).Of(subject)) yield return order;
        if (length == StepLength.Headline) yield break;
        foreach (var line in subject.Lines)
        {
            var isRiff = subject.Needs.Contains(line.Riff.Name);
            if (isRiff && length == StepLength.WalkThrough) continue;
            yield return $"{Capital(isRiff ? CallOuts.Telling.RiffTeller.RiffName(SpokenName.Of(line.Riff.Name)) : SpokenName.Of(line.Riff.Name))}.";
            foreach (var breath in CallOutOf(line.Riff).WalkThrough.Breaths) yield return breath;
        }
    }

    private IEnumerable<string> RoadMap(RoadMap map, StepLength length)
    {
        var callOut = RoadMapTeller.For(map, song);
        return length == StepLength.Headline ? callOut.Headline.Breaths : callOut.Headline.Breaths.Concat(callOut.WalkThrough.Breaths);
    }

    private static string Name(Subject subject) => subject.Kind == SubjectKind.Riff
        ? Capital(CallOuts.Telling.RiffTeller.RiffName(SpokenName.Of(subject.What.Name))) + "."
        : Capital(SpokenName.Of(subject.What.ToString())) + ".";

    private CallOut CallOutOf(Riff riff)
    {
        if (!told.TryGetValue(riff.Name, out var callOut)) told[riff.Name] = callOut = CallOutWriter.For(riff, callOuts);
        return callOut;
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
