using Fretlore.Exchange.TextTab;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>The song as plain-text tab.</summary>
internal sealed class TextTabSection : IKitSection
{
    public string Doing => "Writing text tab";

    public double Weight => 0.1;

    public object InputOf(KitSource source) => (source.SongAlone, source.Options);

    public SectionResult Make(KitSource source, Action<double> progress) => new SectionResult.Made([KitFile.Text(
        "song.txt", "The song as tab in plain text, for mail and forums; what plain text can't say is left out", TextTabWriter.Write(source.Song, source.Reading).Text)]);
}
