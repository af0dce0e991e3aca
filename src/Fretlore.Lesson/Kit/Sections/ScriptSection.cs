using Fretlore.Lesson.Script;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>What to say while filming.</summary>
internal sealed class ScriptSection : IKitSection
{
    public string Doing => "Writing the script";

    public double Weight => 0.1;

    public SectionResult Make(KitSource source, Action<double> progress) => new SectionResult.Made([KitFile.Text(
        "script.md", "What to say while filming: the running order and a call-out for every riff", ScriptWriter.Write(source.Song, source.Reading)) with { Audience = Audience.Teacher }]);
}
