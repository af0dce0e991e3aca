using Fretlore.Exchange.Midi;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>The song as a Standard MIDI File.</summary>
internal sealed class MidiSection : IKitSection
{
    public string Doing => "Writing MIDI";

    public double Weight => 0.1;

    public object InputOf(KitSource source) => (source.SongAlone, source.Options);

    public SectionResult Make(KitSource source, Action<double> progress) => new SectionResult.Made([KitFile.Written(
        "song.mid", "The song as it sounds, to play along with or to load into a sequencer",
        stream => MidiWriter.Write(stream, source.Played))]);
}
