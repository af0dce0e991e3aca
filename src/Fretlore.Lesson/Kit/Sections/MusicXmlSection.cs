using Fretlore.Exchange.MusicXml;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>The song as MusicXML.</summary>
internal sealed class MusicXmlSection : IKitSection
{
    public string Doing => "Writing MusicXML";

    public double Weight => 0.2;

    public object InputOf(KitSource source) => (source.SongAlone, source.Options);

    public SectionResult Make(KitSource source, Action<double> progress) => new SectionResult.Made([KitFile.Written(
        "song.musicxml", "The song for notation programs, with strings, frets and techniques",
        stream => MusicXmlWriter.Write(stream, source.Song, source.Reading))]);
}
