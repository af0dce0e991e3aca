using Fretlore.Lesson.Fingers;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>Fingers, positions and how hard each bar is, as data.</summary>
internal sealed class HandsSection : IKitSection
{
    public string Doing => "Planning fingers";

    public double Weight => 0.2;

    public SectionResult Make(KitSource source, Action<double> progress) => new SectionResult.Made([KitFile.Written(
        "hands.json", "Which finger plays what, and how hard each bar and riff is for the fretting hand, as data",
        stream => stream.Write(HandData.Of(source.Song, source.Hands, Enumerable.Range(0, source.Song.Parts.Count)).ToJson()))]);
}
