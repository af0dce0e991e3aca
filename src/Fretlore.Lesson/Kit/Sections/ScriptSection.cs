using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.ReadingBack;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Script;
using Fretlore.Score;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>What to say while filming.</summary>
internal sealed class ScriptSection : IKitSection
{
    public string Doing => "Writing the script";

    public double Weight => 0.1;

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        var plan = (source.Film as FilmPlanResult.Made)?.Plan;
        var script = KitFile.Text(
            "script.md", "What to say while filming: the running order and a call-out for every riff", ScriptWriter.Write(source.Song, source.Reading, film: plan, hands: source.Hands)) with { Audience = Audience.Teacher };
        return new SectionResult.Made([script], [.. Unproven(source.Song, CallOutWriter.For(source.Song, source.Reading, hands: source.Hands))]);
    }

    /// <summary>A warning for each call-out whose words, read back into notes, are not its riff.</summary>
    internal static IEnumerable<string> Unproven(Song song, IEnumerable<CallOut> callOuts)
    {
        foreach (var callOut in callOuts)
        {
            if (CallOutCheck.Problem(callOut, song) is not { } problem) continue;
            yield return $"The call-out of {callOut.Riff} does not give the riff back when it is read ({problem}): read it against the tab before you say it.";
        }
    }
}
