using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Script;

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
        return new SectionResult.Made([script], [.. CallOutWriter.For(source.Song, source.Reading, hands: source.Hands).Select(callOut => callOut.Caution).OfType<string>()]);
    }
}
